import { expect, test } from 'vitest'
import { bench, consent, item, minor, put, release, sendings, settle } from './outbox-bench.ts'

test(
	'checked beside its recipient, sent once, recorded with an audit row; subject and file ' +
		'name are neutral',
	async () => {
		const { app, smtp, visitId, playerId } = await bench()
		await app.ask('consents.record', { playerId, consent: consent('email', 'Owain Trescott') })
		const itemId = await put(app, visitId)
		expect(await item(app, itemId)).toMatchObject({
			state: 'to-check',
			protection: 'password',
			due: '2027-01-22',
			ageDays: 0,
			playerName: 'Owain Trescott',
			birthDate: '1994-03-30',
		})
		expect(JSON.stringify(await app.ask('outbox.list'))).not.toContain(
			(await app.ask('outbox.password', { itemId })).password,
		)
		const { sha256 } = await item(app, itemId)
		expect(
			(await app.refused('outbox.release', { itemId, sha256, compared: true, warningsRead: false }))
				.code,
		).toBe('outbox.page-not-seen')
		expect(
			(
				await app.refused('outbox.release', {
					itemId,
					sha256,
					compared: false,
					warningsRead: false,
				})
			).problems?.[0]?.path,
		).toBe('compared')
		await release(app, itemId)
		await settle(app)
		expect(await item(app, itemId)).toMatchObject({ state: 'sent', attempts: 1 })
		expect(smtp.received).toHaveLength(1)
		const [{ text, to } = { text: '', to: [] }] = smtp.received
		expect(to).toEqual(['owain@player.example'])
		expect(text).toMatch(/^Subject: Document LW-[0-9A-F]{8} from Invented Clinic\r$/m)
		expect(text).not.toMatch(/^Subject:.*(Owain|report)/im)
		expect(text).not.toContain((await app.ask('outbox.password', { itemId })).password)
		expect(await sendings(app, visitId)).toMatchObject([
			{ recipient: 'Owain Trescott', channel: 'send', version: 1 },
		])
		const { rows } = await app.ask('audit.page', { limit: 50, function: 'send' })
		expect(rows[0]).toMatchObject({
			playerId,
			person: 'A. Example',
			objectRef: expect.stringMatching(/^sending:/),
		})
		expect((await app.ask('audit.verify')).problems).toEqual([])
	},
)
test(
	'consent is asked at the moment of sending: withdrawn while it waits, it does ' + 'not leave',
	async () => {
		const { app, smtp, wire, visitId, playerId } = await bench()
		expect(
			(
				await app.refused('outbox.release', {
					itemId: await put(app, visitId),
					sha256: '',
					compared: true,
					warningsRead: false,
				})
			).code,
		).toBe('outbox.page-not-seen')
		const itemId = await put(app, visitId)
		const { sha256 } = await app.ask('outbox.look', { itemId })
		expect(
			(await app.refused('outbox.release', { itemId, sha256, compared: true, warningsRead: false }))
				.code,
		).toBe('outbox.no-consent')
		const { consentId } = await app.ask('consents.record', {
			playerId,
			consent: consent('email', 'Owain Trescott'),
		})
		wire.cut = 'connect'
		await release(app, itemId)
		await settle(app)
		expect(await item(app, itemId)).toMatchObject({ state: 'ready' })
		await app.ask('consents.withdraw', {
			playerId,
			consentId,
			withdrawn: '2027-01-20',
			withdrawnBy: 'Owain Trescott',
		})
		wire.cut = undefined
		await settle(app)
		expect(await item(app, itemId)).toMatchObject({
			state: 'to-check',
			history: expect.arrayContaining([
				expect.objectContaining({ says: expect.stringMatching(/withdrawn/) }),
			]),
		})
		expect(smtp.received).toHaveLength(0)
		expect(await sendings(app, visitId)).toEqual([])
	},
)
test("a minor's report goes to a consenting guardian's address only", async () => {
	const { app, smtp, visitId, playerId } = await bench(minor)
	expect(
		(
			await app.refused('outbox.add', {
				visitId,
				kind: 'player',
				recipientId: 'player',
				channel: 'smtp',
				due: '2027-01-22',
			})
		).code,
	).toBe('outbox.blocked')
	const { contactId } = await app.ask('outbox.addContact', {
		playerId,
		name: 'Coach Invented',
		role: 'coach',
		email: 'coach@club.example',
		emailAgain: 'coach@club.example',
		warningsRead: false,
	})
	expect(
		(
			await app.refused('outbox.add', {
				visitId,
				kind: 'guardian',
				recipientId: contactId,
				channel: 'smtp',
				due: '2027-01-22',
			})
		).code,
	).toBe('outbox.blocked')
	expect(
		(
			await app.refused('outbox.add', {
				visitId,
				kind: 'coach',
				recipientId: contactId,
				channel: 'smtp',
				due: '2027-01-22',
			})
		).problems?.[0]?.path,
	).toBe('consent')
	const itemId = await put(app, visitId, { kind: 'guardian', recipientId: 'guardian' })
	const { sha256 } = await app.ask('outbox.look', { itemId })
	expect(
		(await app.refused('outbox.release', { itemId, sha256, compared: true, warningsRead: false }))
			.code,
	).toBe('outbox.no-consent')
	await app.ask('consents.record', {
		playerId,
		consent: consent('email', 'Rae Ashdown', 'Rae Ashdown', 'parent'),
	})
	await app.ask('consents.record', {
		playerId,
		consent: consent('share-with-coach', 'Coach Invented', 'Rae Ashdown', 'parent'),
	})
	await app.ask('consents.record', {
		playerId,
		consent: consent('email', 'Coach Invented', 'Rae Ashdown', 'parent'),
	})
	await release(app, itemId)
	await release(app, await put(app, visitId, { kind: 'coach', recipientId: contactId }))
	await settle(app)
	expect(smtp.received.map((message) => message.to)).toEqual([
		['rae@guardian.example'],
		['coach@club.example'],
	])
	expect((await app.ask('outbox.password', { itemId })).phone).toBe('555 0177')
})
test(
	'a typed address: twice, with its warnings read, on the record before it is a ' + 'recipient',
	async () => {
		const { app, playerId, visitId } = await bench()
		const typed = {
			playerId,
			name: 'Dr Invented',
			role: 'doctor',
			email: 'owian@player.example',
			emailAgain: 'owian@player.example',
			warningsRead: false,
		}
		expect(
			(await app.refused('outbox.addContact', { ...typed, emailAgain: 'owain@player.example' }))
				.problems?.[0]?.path,
		).toBe('emailAgain')
		expect(
			(
				await app.refused('outbox.addContact', {
					...typed,
					email: 'a@b.example, c@d.example',
					emailAgain: 'a@b.example, c@d.example',
				})
			).code,
		).toBe('outbox.not-an-address')
		const asked = await app.ask('outbox.addContact', typed)
		expect(asked).toMatchObject({
			warnings: [expect.stringMatching(/one letter off owain@player/)],
		})
		expect(asked.contactId).toBeUndefined()
		const { contactId } = await app.ask('outbox.addContact', { ...typed, warningsRead: true })
		const { recipients } = await app.ask('outbox.recipients', { visitId })
		expect(
			recipients.map(
				(choice: { recipient: { recipientId: string } }) => choice.recipient.recipientId,
			),
		).toEqual(['player', contactId])
		await app.ask('consents.record', {
			playerId,
			consent: consent('share-with-care', 'Dr Invented', 'Owain Trescott'),
		})
		await app.ask('consents.record', {
			playerId,
			consent: consent('email', 'Dr Invented', 'Owain Trescott'),
		})
		const itemId = await put(app, visitId, { kind: 'referral', recipientId: contactId })
		const { sha256, warnings } = await app.ask('outbox.look', { itemId })
		expect(warnings).toHaveLength(1)
		expect(
			(await app.refused('outbox.release', { itemId, sha256, compared: true, warningsRead: false }))
				.code,
		).toBe('outbox.warnings-not-read')
		await app.ask('outbox.release', { itemId, sha256, compared: true, warningsRead: true })
		expect(
			(
				await app.refused('outbox.add', {
					visitId,
					kind: 'player',
					recipientId: 'nobody',
					channel: 'smtp',
					due: '2027-01-22',
				})
			).code,
		).toBe('outbox.recipient-is-gone')
	},
)
