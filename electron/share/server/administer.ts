/** What whoever runs the server sees of the installations, and how one is put out from there. */
import type pg from 'pg'
import { z } from 'zod'

const standingSchema = z.object({
	origin: z.string(),
	admitted: z.date(),
	admittedBy: z.string(),
	seen: z.date().nullable(),
	revoked: z.date().nullable(),
	canLogIn: z.boolean(),
	records: z.coerce.number(),
	bytes: z.coerce.number(),
	/** numbers of that installation below its last that are not there */
	missing: z.coerce.number(),
})
/** One installation, as the server knows it: no name, nothing of what it wrote. */
export type InstallationStanding = z.infer<typeof standingSchema>

/** The installations in the order in which they were admitted. */
export async function installations(client: pg.Client): Promise<InstallationStanding[]> {
	const { rows } = await client.query(
		`SELECT pc.origin, pc.admitted, pc.admitted_by AS "admittedBy", pc.seen, pc.revoked,
			coalesce((SELECT rolcanlogin FROM pg_roles WHERE rolname = pc.login), false) AS "canLogIn",
			held.records, held.bytes, held.last - held.records AS missing
		FROM lastwright.pc CROSS JOIN LATERAL (
			SELECT count(*) AS records, coalesce(sum(octet_length(sealed)), 0) AS bytes,
				coalesce(max(number), 0) AS last
			FROM lastwright.record WHERE record.origin = pc.origin) AS held
		ORDER BY pc.admitted, pc.origin`,
	)
	return z.array(standingSchema).parse(rows)
}
/** Ends the login of an installation and its sessions; done again it does no harm. */
export async function revokeAsAdministrator(client: pg.Client, origin: string): Promise<void> {
	await client.query('SELECT lastwright.revoke(NULL, $1, NULL)', [origin])
}
