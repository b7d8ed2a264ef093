/** Coming in and being put out: by functions of the server, so that no PC may make roles. */
import { createHash, randomBytes } from 'node:crypto'
import { afterEach, expect, it } from 'vitest'
import { Clinic, onServer, sqlState, verifierOf, write } from './bench.ts'

const clinics: Clinic[] = []
afterEach(async () => {
	for (const clinic of clinics.splice(0)) await clinic.end()
})
onServer('installations', (cluster) => {
	const begin = async () => {
		const clinic = await Clinic.of(cluster())
		clinics.push(clinic)
		return clinic
	}
	it('the first comes in by the invitation of who runs the server, others are admitted by it', async () => {
		const clinic = await begin()
		const first = await clinic.pc()
		const asked = await clinic.knock(await clinic.invite(first))
		expect(asked.state).toBe('waiting')
		// not admitted yet: its own login does not exist
		await expect(clinic.client(asked.login, asked.password)).rejects.toMatchObject({
			code: '28P01',
		})
		const { rows } = await first.client.query('SELECT origin, state FROM lastwright.guest')
		expect(rows).toContainEqual({ origin: asked.origin, state: 'waiting' })
		await first.client.query('SELECT lastwright.admit($1, $2)', [clinic.word, asked.guest])
		const second = await clinic.client(asked.login, asked.password)
		await write(first, 1)
		expect((await second.query('SELECT origin FROM lastwright.record')).rows).toEqual([
			{ origin: first.origin },
		])
	})
	it('a second invitation of who runs the server waits as any other', async () => {
		const clinic = await begin()
		await clinic.pc()
		expect((await clinic.knock(await clinic.invite())).state).toBe('waiting')
	})
	it('an invitation is for one: asked again it says how it stands, another PC is refused', async () => {
		const clinic = await begin()
		const first = await clinic.pc()
		const invited = await clinic.invite(first)
		const guest = await clinic.client(invited.login, invited.password)
		const mine = ['aaaaaaaaaaaa', randomBytes(44), randomBytes(44), verifierOf('long'), null]
		const knock = (asked: unknown[]) =>
			guest.query('SELECT lastwright.knock($1, $2, $3, $4, $5) AS state', asked)
		expect((await knock(mine)).rows).toEqual([{ state: 'waiting' }])
		expect((await knock(mine)).rows).toEqual([{ state: 'waiting' }])
		expect(await sqlState(knock(['bbbbbbbbbbbb', ...mine.slice(1)]))).toBe('LW003')
		expect((await guest.query('SELECT lastwright.knocked() AS state')).rows).toEqual([
			{ state: 'waiting' },
		])
		await first.client.query('SELECT lastwright.refuse($1, $2)', [clinic.word, invited.login])
		expect((await guest.query('SELECT lastwright.knocked() AS state')).rows).toEqual([
			{ state: 'refused' },
		])
		const admit = 'SELECT lastwright.admit($1, $2)'
		expect(await sqlState(first.client.query(admit, [clinic.word, invited.login]))).toBe('LW003')
	})
	it('an invitation ends by itself, and its role is cleared by the next', async () => {
		const clinic = await begin()
		const first = await clinic.pc()
		const invited = await clinic.invite(first)
		const guest = await clinic.client(invited.login, invited.password)
		const administrator = await clinic.administrator()
		await administrator.query(
			"UPDATE lastwright.guest SET until = clock_timestamp() - interval '1 s' WHERE login = $1",
			[invited.login],
		)
		const knock = guest.query('SELECT lastwright.knock($1, $2, $3, $4, $5)', [
			...['aaaaaaaaaaaa', randomBytes(44), randomBytes(44), verifierOf('long'), null],
		])
		expect(await sqlState(knock)).toBe('LW003')
		await clinic.invite(first)
		const { rows } = await administrator.query('SELECT FROM pg_roles WHERE rolname = $1', [
			invited.login,
		])
		expect(rows).toEqual([])
	})
	it('a name that was on the server before is refused: a copy takes a name of its own', async () => {
		const clinic = await begin()
		const first = await clinic.pc()
		const knock = clinic.knock(await clinic.invite(first), first.origin)
		expect(await sqlState(knock)).toBe('LW004')
	})
	it('twenty invitations are as many as may be open', async () => {
		const clinic = await begin()
		const first = await clinic.pc()
		const all: string[] = []
		while (all.at(-1) !== 'LW007' && all.length < 30) all.push(await sqlState(clinic.invite(first)))
		// the first PC's own is still listed
		expect(all.filter((state) => state === 'done')).toHaveLength(19)
	})
	it('one that is put out loses its sessions, its login and all that it saw', async () => {
		const clinic = await begin()
		const first = await clinic.pc()
		const lost = await clinic.pc(first)
		await write(lost, 1)
		const cut = new Promise((resolve) => lost.client.once('end', resolve))
		const next = createHash('sha256').update('next word').digest()
		await first.client.query('SELECT lastwright.revoke($1, $2, $3)', [
			...[clinic.word, lost.origin, next],
		])
		await cut
		await expect(clinic.client(lost.login, lost.password)).rejects.toMatchObject({ code: '28P01' })
		// it knew the word, which is another one now
		expect(await sqlState(clinic.invite(first))).toBe('LW002')
		// what it wrote stays
		expect((await first.client.query('SELECT FROM lastwright.record')).rowCount).toBe(1)
	})
	it('a session that outlived its end reads and writes nothing', async () => {
		const clinic = await begin()
		const first = await clinic.pc()
		await write(first, 1)
		const lost = await clinic.pc(first)
		// as if its session could not be ended
		await (await clinic.administrator()).query(
			'UPDATE lastwright.pc SET revoked = clock_timestamp() WHERE origin = $1',
			[lost.origin],
		)
		expect((await lost.client.query('SELECT FROM lastwright.record')).rowCount).toBe(0)
		expect((await lost.client.query('SELECT FROM lastwright.pc')).rowCount).toBe(0)
		expect(await sqlState(write(lost, 1))).toBe('42501')
		expect(await sqlState(clinic.invite(lost))).toBe('LW001')
	})
	it('a server put back from an older dump takes an installation in again under its name', async () => {
		const clinic = await begin()
		const first = await clinic.pc()
		const second = await clinic.pc(first)
		await (await clinic.administrator()).query('DELETE FROM lastwright.pc WHERE origin = $1', [
			second.origin,
		])
		const again = await clinic.knock(await clinic.invite(first), second.origin)
		await first.client.query('SELECT lastwright.admit($1, $2)', [clinic.word, again.guest])
		const back = await clinic.client(again.login, again.password)
		await write({ origin: second.origin, client: back }, 1)
	})
})
