/** What two places say of whom and where to send holds a document back until somebody answers. */
import { expect, test } from 'vitest'
import { type Opened, player, signed } from './bench-app.ts'
import { apart, back, bring, measured } from './bench-pack.ts'

const guardian = (email: string) => ({ name: 'Rae Marlowe', relation: 'parent', email })
const recipientsOf = async (app: Opened, visitId: string) =>
	(await app.ask('outbox.recipients', { visitId })).recipients as {
		recipient: { role: string; recipientId: string }
	}[]

test("a guardian's address that two places changed is not used before it is answered", async () => {
	const {
		app,
		playerId,
		away: [laptop],
	} = await apart()
	const visitId = await signed(app, playerId, measured)
	const save = (at: Opened, email: string) =>
		at.ask('players.save', { playerId, player: { ...player, guardian: guardian(email) } })
	await save(app, 'rae@example.org')
	await save(laptop!, 'rae@example.net')
	const { changes, questions } = await bring(app, await back(laptop!))
	expect(questions).toBe(1)
	expect(changes[0].lines).toEqual([
		expect.stringMatching(
			/^The guardian was changed in two places \(at home .*example.org; away .*example.net\): it is asked/,
		),
	])
	const put = {
		visitId,
		kind: 'guardian',
		recipientId: 'guardian',
		channel: 'print',
		due: '2027-01-30',
	}
	expect((await recipientsOf(app, visitId)).map(({ recipient }) => recipient.role)).toContain(
		'guardian',
	)
	expect((await app.refused('outbox.add', put)).code).toBe('outbox.contested')
	const [question] = (await app.ask('outreach.list')).questions
	const [first] = question.fields[0].values
	await app.ask('outreach.answer', {
		what: 'details',
		id: playerId,
		playerId,
		choices: { guardian: first.record },
	})
	const answer = await app.call('outbox.add', put)
	expect(answer.ok ? '' : answer.code).not.toBe('outbox.contested')
	app.close()
})
test('two drafts say which one is here and which one is the laptop its', async () => {
	const {
		app,
		playerId,
		away: [laptop],
	} = await apart()
	const edit = async (at: Opened, notes: string) => {
		const { draft } = await at.ask('drafts.open', { playerId, visitDate: '2027-01-20' })
		const visit = { ...draft.content.visit, notes }
		await at.ask('drafts.save', { draftId: draft.draftId, content: { ...draft.content, visit } })
	}
	await edit(app, 'here')
	await edit(laptop!, 'away')
	const {
		draftsBoth: [both],
	} = await bring(app, await back(laptop!))
	const { places, differences } = await app.ask('outreach.compareDrafts', { drafts: both.drafts })
	const said = { first: places[0], second: places[1] }
	expect(differences).toEqual([{ path: 'notes', ...said }])
	app.close()
})
