/** What is done with a pack, and the steps of it that are counted. */
export const workKinds = ['pack', 'way-back', 'look', 'merge', 'open'] as const
export type WorkKind = (typeof workKinds)[number]
/**
 * passphrase: it is tried or stretched, which takes its time; gathering: records read here; verifying: the laptop's own trail and records; sealing: each record;
 * writing: bytes of the file; opening: each entry of a file; checking: each record against those
 * here; taking: all of it at once.
 */
export const workSteps = [
	'passphrase',
	'gathering',
	'verifying',
	'sealing',
	'writing',
	'opening',
	'checking',
	'taking',
] as const
export type WorkStep = (typeof workSteps)[number]
