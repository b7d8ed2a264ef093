/** Sets up the server's database for shared records, or brings it up to this version. */
import { randomBytes } from 'node:crypto'
import type pg from 'pg'
import { z } from 'zod'
import { inOne } from '../connect.ts'
import { type Roles, rolesOf, steps } from './steps.table.ts'

/** The oldest server on which this was tried. */
const leastServer = 150_000
/** Two that prepare at once: the second one waits and finds nothing to do. */
const prepareLock = 7_283_114

/** Why a database cannot be set up, in words. */
export class CannotPrepare extends Error {}

export interface Prepared {
	/** steps that were taken; 0 where it stood at this version */
	taken: number
	/** the step at which it stands */
	step: number
	/** in the name of each role */
	tag: string
	/** settings of the server that matter here, by name */
	settings: Settings
}
const settingNames = [
	...['server_version', 'ssl', 'ssl_min_protocol_version', 'fsync', 'full_page_writes'],
	...['synchronous_commit', 'password_encryption', 'listen_addresses'],
] as const
type Settings = Partial<Record<(typeof settingNames)[number], string>>

const first = async (client: pg.Client, text: string, values: unknown[] = []): Promise<unknown> =>
	(await client.query<Record<string, unknown>>(text, values)).rows[0]

const standingSchema = z.object({
	version: z.coerce.number(),
	database: z.string(),
	encoding: z.string(),
	may_own: z.boolean(),
	may_make_roles: z.boolean(),
	is_super: z.boolean(),
	user: z.string(),
	has_schema: z.boolean(),
	has_meta: z.boolean(),
	others: z.array(z.string()),
})
type Standing = z.infer<typeof standingSchema>
/** What is there, and who asks. */
const standing = async (client: pg.Client): Promise<Standing> =>
	standingSchema.parse(
		await first(
			client,
			`SELECT current_setting('server_version_num') AS version, current_database() AS database,
				getdatabaseencoding() AS encoding, current_user AS user,
				pg_has_role(current_user, (SELECT datdba FROM pg_database
					WHERE datname = current_database()), 'MEMBER') AS may_own,
				(SELECT rolsuper OR rolcreaterole FROM pg_roles WHERE rolname = current_user)
					AS may_make_roles,
				(SELECT rolsuper FROM pg_roles WHERE rolname = current_user) AS is_super,
				to_regnamespace('lastwright') IS NOT NULL AS has_schema,
				to_regclass('lastwright.meta') IS NOT NULL AS has_meta,
				ARRAY(SELECT format('%s.%s', n.nspname, c.relname) FROM pg_class c
					JOIN pg_namespace n ON n.oid = c.relnamespace
					WHERE c.relkind IN ('r', 'p', 'v', 'm', 'S', 'f')
						AND n.nspname !~ '^pg_' AND n.nspname NOT IN ('information_schema', 'lastwright')
						AND NOT EXISTS (SELECT FROM pg_depend d WHERE d.objid = c.oid AND d.deptype = 'e')
					ORDER BY 1 LIMIT 3) AS others`,
		),
	)
/** @throws CannotPrepare naming what is in the way */
function mustFit(found: Standing): void {
	if (found.version < leastServer)
		throw new CannotPrepare('the server is older than PostgreSQL 15: set up a newer one')
	if (found.encoding !== 'UTF8')
		throw new CannotPrepare(
			`the database is written in ${found.encoding}: make one with the encoding UTF8`,
		)
	if (!found.may_own || !found.may_make_roles)
		throw new CannotPrepare(
			`"${found.user}" must own the database and may make roles (CREATEROLE): ask whoever runs ` +
				'the server, or take a superuser',
		)
	if (found.has_schema) {
		if (found.has_meta) return
		throw new CannotPrepare('the schema "lastwright" is there, and is not ours')
	}
	if (['postgres', 'template1'].includes(found.database))
		throw new CannotPrepare(
			`"${found.database}" is the server's own database: make one for the clinic ` +
				'(CREATE DATABASE lastwright)',
		)
	if (found.others.length > 0)
		throw new CannotPrepare(
			`the database is not empty (${found.others.join(', ')}): make one for the clinic alone`,
		)
}
/** Makes the owner of all that follows. */
async function begin(client: pg.Client, { is_super }: Standing): Promise<string> {
	const tag = randomBytes(3).toString('hex')
	const { owner } = rolesOf(tag)
	await client.query(`CREATE ROLE ${owner} NOLOGIN CREATEROLE`)
	if (!is_super) await client.query(`GRANT ${owner} TO CURRENT_USER`)
	return tag
}
/** The database is for the PCs alone: done each time, since a dump may come back without its rights. */
async function letIn(client: pg.Client, database: string, { pc, guest }: Roles): Promise<void> {
	const name = client.escapeIdentifier(database)
	await client.query(`REVOKE CONNECT, TEMPORARY ON DATABASE ${name} FROM PUBLIC`)
	await client.query('REVOKE ALL ON SCHEMA public FROM PUBLIC')
	await client.query(`GRANT CONNECT ON DATABASE ${name} TO ${pc}, ${guest}`)
}
const metaSchema = z.object({ tag: z.string().regex(/^[0-9a-f]{6}$/), step: z.int().min(0) })
/** Takes the steps that are lacking. */
async function takeSteps(
	client: pg.Client,
	found: Standing,
): Promise<Pick<Prepared, 'taken' | 'step' | 'tag'>> {
	const before = found.has_meta
		? metaSchema.parse(await first(client, 'SELECT tag, step FROM lastwright.meta'))
		: { tag: await begin(client, found), step: 0 }
	if (before.step > steps.length)
		throw new CannotPrepare(
			`it was set up by a newer Lastwright (step ${before.step}; this one knows up to ` +
				`${steps.length}): use that one`,
		)
	const roles = rolesOf(before.tag)
	for (const step of steps.slice(before.step)) await client.query(step(roles))
	await client.query('UPDATE lastwright.meta SET step = $1', [steps.length])
	await letIn(client, found.database, roles)
	return { tag: before.tag, step: steps.length, taken: steps.length - before.step }
}
const settingRows = z.array(z.object({ name: z.enum(settingNames), setting: z.string() }))
/** What the login may not see is left out. */
async function settingsOf(client: pg.Client): Promise<Settings> {
	const { rows } = await client.query(
		'SELECT name, setting FROM pg_settings WHERE name = ANY ($1::text[])',
		[settingNames],
	)
	return Object.fromEntries(settingRows.parse(rows).map(({ name, setting }) => [name, setting]))
}
/**
 * All of it or none of it; nothing is done where it stands at this version.
 * @param client connected as whoever administers the server
 * @throws CannotPrepare in words, naming what is in the way
 */
export async function prepare(client: pg.Client): Promise<Prepared> {
	const settings = await settingsOf(client)
	const made = await inOne(client, async () => {
		await client.query('SELECT pg_advisory_xact_lock($1)', [prepareLock])
		const found = await standing(client)
		mustFit(found)
		return takeSteps(client, found)
	})
	return { ...made, settings }
}
