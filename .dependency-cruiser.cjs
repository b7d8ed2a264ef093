/**
 * The one-way street: renderer -> shared <- electron, and inside shared desk -> engine.
 * Each rule has a planted violation in tests/engine/boundaries.test.ts.
 */
const measuringRooms = '(sizing|ankle|posture|growth|screening|loading|footwear|insert|season)'

/** The table of conditions and what they are called. */
const conditionTables =
	'^shared/engine/(conditions/(registry|row|regions/[^/]+)|words/en/conditions\\.table)\\.ts$'
/** What is wrong with an entry of a file, in words: it depends on nothing. */
const problemWords = '^shared/engine/words/en/problems\\.ts$'

module.exports = {
	forbidden: [
		{
			name: 'shared-is-pure',
			comment:
				'the engine and the desk import only shared/, zod, a hash, dates and an estimator of tries',
			severity: 'error',
			from: { path: '^shared/' },
			to: {
				pathNot: [
					'^shared/',
					'(^|/)node_modules/(zod|@noble/hashes|date-fns|@date-fns/utc|@zxcvbn-ts/[a-z-]+)/',
				],
			},
		},
		{
			name: 'engine-knows-no-desk',
			comment: 'what a clinician knows does not depend on what a clinic does with it',
			severity: 'error',
			from: { path: '^shared/engine/' },
			to: { path: '^shared/(desk/|contract\\.ts)' },
		},
		{
			name: 'desk-knows-no-contract',
			severity: 'error',
			from: { path: '^shared/desk/' },
			to: { path: '^shared/contract\\.ts' },
		},
		{
			name: 'files-stand-in-rooms',
			comment: 'only the spine and the contract stand beside the rooms',
			severity: 'error',
			from: {
				path: '^(shared/(engine/|desk/)?[^/]+|electron/services/[^/]+|renderer/screens/[^/]+)\\.tsx?$',
				pathNot: '^shared/(contract|engine/assess)\\.ts$',
			},
			to: {},
		},
		{
			name: 'schema-below-everything',
			comment:
				'what is recorded does not depend on what is made of it; the list of conditions and the ' +
				'words of problems are tables',
			severity: 'error',
			from: { path: '^shared/engine/visit/' },
			to: {
				path: '^shared/',
				pathNot: `^shared/engine/(visit|plain)/|${conditionTables}|${problemWords}`,
			},
		},
		{
			name: 'protocol-above-the-schema-only',
			severity: 'error',
			from: { path: '^shared/engine/protocol/' },
			to: {
				path: '^shared/',
				pathNot: `^shared/engine/(protocol|visit|plain)/|${conditionTables}`,
			},
		},
		{
			name: 'condition-tables-below-everything',
			comment: 'they are read by the schema: types only, but for each other',
			severity: 'error',
			from: { path: conditionTables },
			to: {
				path: '^shared/',
				pathNot: conditionTables,
				dependencyTypesNot: ['type-only'],
			},
		},
		{
			name: 'words-above-the-schema-only',
			severity: 'error',
			from: { path: '^shared/engine/words/' },
			to: {
				path: '^shared/',
				pathNot: '^shared/engine/((words|visit|plain)/|protocol/basis\\.ts$)',
			},
		},
		{
			name: 'charts-below-report',
			severity: 'error',
			from: { path: '^shared/engine/charts/' },
			to: { path: '^shared/engine/report/' },
		},
		{
			name: 'rooms-meet-in-the-spine',
			comment: 'a room does not call its neighbour',
			severity: 'error',
			from: { path: `^shared/engine/${measuringRooms}/` },
			to: {
				path: `^shared/engine/(${measuringRooms}|charts|report)/`,
				pathNot: '^shared/engine/$1/',
			},
		},
		{
			name: 'asked-above-the-rooms',
			comment: 'it reads the rooms, so nothing of the engine reads it',
			severity: 'error',
			from: { path: '^shared/engine/', pathNot: '^shared/engine/asked/' },
			to: { path: '^shared/engine/asked/' },
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
			name: 'parts-know-no-screen',
			severity: 'error',
			from: { path: '^renderer/parts/' },
			to: { path: '^renderer/screens/' },
		},
		{
			name: 'host-knows-no-screen',
			severity: 'error',
			from: { path: '^electron/' },
			to: { path: '^renderer/' },
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
