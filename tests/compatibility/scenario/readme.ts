/** What a fixture says of itself. */
import type { Manifest } from '../manifest.ts'
import { pins, secrets } from './people.ts'

const files = [
	['`home/`', 'the data folder of the clinic, with records of every kind'],
	['`laptop/`', 'the data folder of a laptop that opened `out.lwpack` and was worked with'],
	['`backup.db`', 'a backup of the clinic, from before its outbox was filled'],
	['`out.lwpack`', 'a pack that went out'],
	['`return.lwpack`', 'what the laptop brings home; not merged yet'],
	['`files/`', 'visit, assessment, plan, calendar, shelf, clinic and protocol as files'],
	['`manifest.json`', 'what this version showed of each of them'],
] as const
/** Everything is invented, so its secrets may be read by everybody. */
export function readme(
	{ version, commit, lookedAt }: Manifest,
	recoveryKeys: { home: string; laptop: string },
): string {
	const rows = [
		...Object.entries(secrets).map(([who, words]) => [`passphrase: ${who}`, words]),
		...Object.entries(pins).map(([who, pin]) => [`PIN: ${who}`, pin]),
		...Object.entries(recoveryKeys).map(([what, key]) => [`recovery key: ${what}`, key]),
	]
	const table = (lines: readonly (readonly (string | undefined)[])[]) =>
		lines.map((cells) => `| ${cells.join(' | ')} |`).join('\n')
	return `# Written by version ${version}

Made by \`node tests/compatibility/make.ts\` with the program at commit ${commit}, and looked at in the
moment ${lookedAt}. Never changed: it stands for what is on disk at clinics. Everybody and
everything in it is invented.

| file | what it is |
|---|---|
${table(files)}

| secret | |
|---|---|
${table(rows)}
`
}
