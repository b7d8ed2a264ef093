/** The one-way street: renderer -> shared <- electron. */
module.exports = {
	forbidden: [
		{
			name: 'shared-is-pure',
			comment: 'the engine imports only itself, zod and a hash',
			severity: 'error',
			from: { path: '^shared/' },
			to: { pathNot: ['^shared/', '(^|/)node_modules/(zod|@noble/hashes)/'] },
		},
		{
			name: 'screens-know-no-host',
			severity: 'error',
			from: { path: '^renderer/' },
			to: { path: '^(electron/|node:)' },
		},
		{
			name: 'screens-no-node',
			severity: 'error',
			from: { path: '^renderer/' },
			to: { dependencyTypes: ['core'] },
		},
		{
			name: 'host-knows-no-screen',
			severity: 'error',
			from: { path: '^electron/' },
			to: { path: '^renderer/' },
		},
		{
			name: 'rooms-meet-in-the-spine',
			comment: 'a room does not call its neighbour',
			severity: 'error',
			from: {
				path: '^shared/(sizing|ankle|posture|growth|screening|loading|footwear|insert|season)/',
			},
			to: {
				path: '^shared/(sizing|ankle|posture|growth|screening|loading|footwear|insert|season)/',
				pathNot: '^shared/$1/',
			},
		},
		{
			name: 'only-the-shell-knows-electron',
			severity: 'error',
			from: { path: '^electron/', pathNot: '^electron/window/' },
			to: { path: '(^|/)node_modules/electron/' },
		},
		{
			name: 'no-circles',
			severity: 'error',
			from: {},
			to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
		},
		{ name: 'not-unresolvable', severity: 'error', from: {}, to: { couldNotResolve: true } },
	],
	options: {
		tsPreCompilationDeps: true,
		enhancedResolveOptions: {
			exportsFields: ['exports'],
			conditionNames: ['import', 'node', 'default'],
			extensions: ['.ts', '.tsx', '.mjs', '.js'],
		},
		doNotFollow: { path: 'node_modules' },
		moduleSystems: ['es6', 'cjs'],
	},
}
