/**
 * The fuses of the packaged program: what each must be and why, and how they are read back from the
 * finished file.
 */

/** One switch of the runtime, set when the program is packaged. @internal */
export interface Fuse {
	/** place in the wire, from memory of the runtime's own fuse list */
	at: number
	/**
	 * its name in electron-builder.yml; none where the builder has no word for it and the default
	 * stays
	 */
	builder?: string
	on: boolean
	why: string
}
/** Every fuse by its name, each with the reason for its position. @internal */
export const fuses: Readonly<Record<string, Fuse>> = {
	RunAsNode: {
		at: 0,
		builder: 'runAsNode',
		on: false,
		why: 'the signed program must not run any script with the rights the user gave to Lastwright',
	},
	EnableCookieEncryption: {
		at: 1,
		builder: 'enableCookieEncryption',
		on: true,
		why: 'should a cookie ever reach the disk, it is sealed by the system',
	},
	EnableNodeOptionsEnvironmentVariable: {
		at: 2,
		builder: 'enableNodeOptionsEnvironmentVariable',
		on: false,
		why: 'an environment variable must not load code into the process that holds the key',
	},
	EnableNodeCliInspectArguments: {
		at: 3,
		builder: 'enableNodeCliInspectArguments',
		on: false,
		why:
			'nobody attaches a debugger to open records; browser tests therefore run on the ' +
			'program before packaging',
	},
	EnableEmbeddedAsarIntegrityValidation: {
		at: 4,
		builder: 'enableEmbeddedAsarIntegrityValidation',
		on: true,
		why: 'changed program files are noticed before they run, where the system supports it',
	},
	OnlyLoadAppFromAsar: {
		at: 5,
		builder: 'onlyLoadAppFromAsar',
		on: true,
		why: 'a folder laid beside the archive must not take its place',
	},
	LoadBrowserProcessSpecificV8Snapshot: {
		at: 6,
		builder: 'loadBrowserProcessSpecificV8Snapshot',
		on: false,
		why: 'there is no snapshot of ours, and none of another may be loaded',
	},
	GrantFileProtocolExtraPrivileges: {
		at: 7,
		builder: 'grantFileProtocolExtraPrivileges',
		on: false,
		why: 'no page is ever loaded from a file, so files get no special rights',
	},
	WasmTrapHandlers: {
		at: 8,
		on: true,
		why: 'the planner runs in WebAssembly; the default is kept',
	},
}
/**
 * The mark that stands before the fuse wire in the program, from memory of the runtime's fuse tool.
 */
const sentinel = Buffer.from('dL7pKGdnNz796PbbjQWNKmHXBZaB9tsX', 'latin1')
const states: Readonly<Record<number, FuseState>> = {
	48: 'off',
	49: 'on',
	114: 'removed',
	144: 'inherit',
}
export type FuseState = 'on' | 'off' | 'removed' | 'inherit' | 'unknown'

/**
 * Reads every fuse wire in a program; a universal program holds one for each processor.
 * @throws Error where there is none, or one of another version
 */
export function readFuses(program: Uint8Array): FuseState[][] {
	const bytes = Buffer.from(program.buffer, program.byteOffset, program.byteLength)
	const wires: FuseState[][] = []
	for (
		let found = bytes.indexOf(sentinel);
		found >= 0;
		found = bytes.indexOf(sentinel, found + 1)
	) {
		const start = found + sentinel.length
		const [version, length] = [bytes[start], bytes[start + 1]]
		if (version !== 1 || length === undefined || length === 0 || start + 2 + length > bytes.length)
			throw new Error(
				`The fuse wire at byte ${found} is of version ${version ?? 'none'} with ` +
					`${length ?? 'no'} fuses; only version 1 is understood.`,
			)
		wires.push(
			[...bytes.subarray(start + 2, start + 2 + length)].map((state) => states[state] ?? 'unknown'),
		)
	}
	if (wires.length === 0)
		throw new Error(
			'No fuse wire was found in this file. Name the program itself, on macOS the file ' +
				'"Electron Framework".',
		)
	return wires
}
/**
 * One line for each fuse that is not as the table wants it, and for each the table does not know.
 */
export function wrongFuses(wires: readonly (readonly FuseState[])[]): string[] {
	const names = Object.entries(fuses)
	return wires.flatMap((wire, number) => {
		const wrong = names.flatMap(([name, fuse]) => {
			const is = wire[fuse.at] ?? 'absent'
			// a fuse the builder has no word for may be absent in an older runtime; it must not be turned
			// round
			if (
				is === (fuse.on ? 'on' : 'off') ||
				(fuse.builder === undefined && (is === 'absent' || is === 'inherit'))
			)
				return []
			return [`${name}: is ${is}, must be ${fuse.on ? 'on' : 'off'}, because ${fuse.why}`]
		})
		const unknown = wire.flatMap((is, at) =>
			names.some(([, fuse]) => fuse.at === at)
				? []
				: [`fuse ${at}: is ${is}, but the table has no reason for it yet`],
		)
		return [...wrong, ...unknown].map((line) =>
			wires.length > 1 ? `part ${number + 1}: ${line}` : line,
		)
	})
}
