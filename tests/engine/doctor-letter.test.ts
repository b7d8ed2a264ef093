/** What the clinician writes into the letter to the doctor, and through whose hands it may go. */
import { describe, expect, it } from 'vitest'
import { assess } from '../../shared/engine/assess.ts'
import type { ReportInput } from '../../shared/engine/report/inputs.ts'
import { kinds } from '../../shared/engine/report/kinds.ts'
import { referralLetter, usualLetter } from '../../shared/engine/report/referral.ts'
import { decisionsSchema, noDecisions } from '../../shared/engine/visit/decisions.ts'
import { sentences } from '../../shared/engine/words/en/documents.table.ts'
import { clinic, json, read } from '../demo.ts'

const emergency = read({
	...json('visit-adolescent.json'),
	screening: { breathlessOrChestPain: true },
})
const inputOf = (letter: object | undefined, more: Partial<ReportInput> = {}) => ({
	visit: emergency,
	assessment: assess(emergency),
	decisions: decisionsSchema.parse({ ...noDecisions, letter }),
	clinic,
	signedAt: '2027-01-20T09:00:00.000Z',
	signedOn: '2027-01-20',
	signedTime: '20:00',
	draft: false,
	...more,
})
const textOf = (letter: object | undefined, more?: Partial<ReportInput>) =>
	JSON.stringify(referralLetter(inputOf(letter, more)))

describe('the letter to the doctor', () => {
	const usual = usualLetter(inputOf(undefined))
	it('asks by what was found where nothing else is written, with day and time and how to reach us', () => {
		const letter = referralLetter(inputOf(undefined))
		expect(usual.urgency).not.toBe('letter')
		expect(letter.subject).toContainEqual([sentences['subject.date'], '20 January 2027, 20:00'])
		expect(letter.subject).toContainEqual([
			sentences['subject.guardian'],
			expect.stringContaining(emergency.player.guardian?.name ?? '?'),
		])
		expect(textOf(undefined)).toContain(usual.question)
		expect(textOf(undefined)).toContain(`To reach us: ${clinic.phone}.`)
		expect(textOf(undefined)).toContain('Enclosures: none. Copy to: none.')
	})
	it('says what was typed in its place, and its own words before the question', () => {
		const typed = {
			question: 'May he travel home by train?',
			words: 'His father drives him to you now.',
			enclosures: 'sheet of measures',
			copyTo: 'Dr Amrit Vale',
		}
		const text = textOf(typed)
		for (const says of Object.values(typed)) expect(text).toContain(says)
		expect(text).not.toContain(usual.question)
		expect(text.indexOf(typed.words)).toBeLessThan(text.indexOf(typed.question))
	})
	it('is headed by the urgency that was chosen, and leaves out no reason for it', () => {
		const reasons = (letter: object | undefined) =>
			referralLetter(inputOf(letter)).blocks.find((block) => block.kind === 'list')
		const chosen = referralLetter(inputOf({ urgency: 'letter' }))
		expect(chosen.title).toBe(sentences['referral.title'])
		expect(referralLetter(inputOf({ urgency: 'emergency' })).title).toBe(
			sentences['referral.titleEmergency'],
		)
		expect(reasons({ urgency: 'letter' })).toEqual(reasons(undefined))
	})
	it('takes own words through no other hands than the player’s', () => {
		const letter = { words: 'She told me alone that she is pregnant.' }
		const through = (handedTo: 'player' | 'guardian') =>
			textOf(letter, { letter: { recipient: 'Dr Vale', handedTo } })
		expect(through('guardian')).not.toContain(letter.words)
		expect(through('guardian')).toContain(sentences['referral.wordsKept'])
		expect(through('player')).toContain(letter.words)
	})
	it('can be written without a sign, once something is asked', () => {
		const well = read({ ...json('visit-adult.json'), conditions: [] })
		const asking = (letter: object | undefined) =>
			kinds.referral.problems({
				...inputOf(letter),
				visit: well,
				assessment: assess(well),
				on: well.visitDate,
			})
		expect(asking(undefined)).toHaveLength(1)
		expect(asking({ question: 'May she run?' })).toEqual([])
	})
})
