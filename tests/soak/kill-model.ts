/**
 * What may stand in a store whose program was killed. What was begun and not told may have happened
 * or not: so there are several possible states until somebody looks.
 */
/** A recovery key that was put in place and killed before anybody saw it. */
export const unseen = ''
export interface Standing {
	passphrase: string
	/** or `unseen` */
	recoveryKey: string
	/** the number that was saved last with the player, and with the draft */
	saved: number
	drafted: number
	signed: readonly string[]
	destroyed: readonly string[]
}
/** A line of the worker: `will` before an act, `did` once it was acknowledged. */
export type Line =
	| { does: 'save' | 'draft'; told: 'will' | 'did'; number: number }
	| { does: 'sign' | 'merge'; told: 'will' }
	| { does: 'sign' | 'merge'; told: 'did'; visitId: string }
	| { does: 'passphrase' | 'recovery'; told: 'will' | 'did'; passphrase: string }
	| { does: 'paper'; told: 'will' | 'did'; recoveryKey: string }
	| { does: 'data-key'; told: 'will' | 'did' }
	| { does: 'destroy'; told: 'will' | 'did'; playerId: string }
	| { does: 'backup'; told: 'will' }
	| { does: 'backup'; told: 'did'; file: string }
	| { does: 'restore'; told: 'will' | 'did'; file: string }
	| { does: 'ready'; told: 'did' }
export interface Model {
	possible: Standing[]
	/** what may have stood when each backup was made */
	backups: Map<string, readonly Standing[]>
	/** what may stand in backups that were begun and never told: a kill leaves them whole, or none */
	untold: readonly Standing[]
}
/** @param backup what stood in the backup that is restored. A destruction is not taken back by it */
const restored = (now: Standing, backup: Standing): Standing[] => [
	{ ...backup, destroyed: now.destroyed },
	// secrets of now stay where the program keeps them from coming back
	{ ...backup, destroyed: now.destroyed, passphrase: now.passphrase, recoveryKey: now.recoveryKey },
	{ ...backup, destroyed: now.destroyed, passphrase: now.passphrase },
	{ ...backup, destroyed: now.destroyed, recoveryKey: now.recoveryKey },
]
function after(
	now: Standing,
	line: Line,
	{ backups, untold }: Omit<Model, 'possible'>,
): Standing[] {
	switch (line.does) {
		case 'save':
			return [{ ...now, saved: line.number }]
		case 'draft':
			return [{ ...now, drafted: line.number }]
		case 'passphrase':
		case 'recovery':
			return [{ ...now, passphrase: line.passphrase }]
		case 'paper':
			return [{ ...now, recoveryKey: line.recoveryKey }]
		case 'destroy':
			return [{ ...now, destroyed: [...now.destroyed, line.playerId] }]
		case 'restore':
			return (backups.get(line.file) ?? untold).flatMap((backup) => restored(now, backup))
		case 'sign':
		case 'merge':
			return line.told === 'did' ? [{ ...now, signed: [...now.signed, line.visitId] }] : [now]
		default:
			return [now]
	}
}
const different = (states: readonly Standing[]): Standing[] => [
	...new Map(states.map((state) => [JSON.stringify(state), state])).values(),
]
/** What may stand after the lines of one round. */
export function follow({ possible, backups, untold }: Model, lines: readonly Line[]): Model {
	let sure = possible
	let begun: Standing[] = []
	for (const line of lines) {
		if (line.does === 'backup' && line.told === 'did') backups.set(line.file, sure)
		const next = different(sure.flatMap((standing) => after(standing, line, { backups, untold })))
		if (line.told === 'will') begun = next
		else {
			sure = next
			begun = []
		}
	}
	const wasCut = lines.at(-1)?.does === 'backup' && lines.at(-1)?.told === 'will'
	return {
		possible: different([...sure, ...begun]),
		backups,
		untold: wasCut ? different([...untold, ...sure]) : untold,
	}
}
