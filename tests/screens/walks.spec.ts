/**
 * Three persons, from the list of players to the signature, by keys alone: how many keys beyond the
 * values, how much there is to read, and that the hand is where it goes on at every step.
 */
import { expect, type Page, test } from '@playwright/test'
import { shot, signButton } from './drive.ts'
import { type RunningHost, startHost } from './host.ts'
import {
	answerAllNo,
	type Hand,
	hand,
	type Known,
	secondsAKey,
	settleAll,
	wordsAMinute,
} from './walking.ts'
import { signedBefore } from './walks-before.ts'

test.describe.configure({ mode: 'serial', timeout: 240_000 })
let host: RunningHost
let page: Page
/** The clinician who comes to the third player has read the screens with the first two. */
const known: Known = new Set()
const faults: string[] = []
test.beforeAll(async ({ browser }) => {
	host = await startHost('--demo')
	page = await browser.newPage({ viewport: { width: 1280, height: 720 } })
	page.on('pageerror', (error) => faults.push(error.message))
	await page.goto(host.url)
	await expect(field('Search players')).toBeFocused()
})
test.afterEach(() => expect(faults).toEqual([]))
test.afterAll(async () => {
	await page.close()
	await host.kill()
})
const field = (name: string) => page.getByRole('textbox', { name, exact: true })
const box = (name: string) => page.getByRole('combobox', { name, exact: true })
const button = (name: string | RegExp) => page.getByRole('button', { name, exact: true })
const radio = (group: string, name: string | RegExp) =>
	page.getByRole('group', { name: group }).getByRole('radio', { name })
const tell = (who: string, { keys, words }: Hand, parts: Record<string, number>) =>
	console.log(
		`${who}: ${keys} keys beyond the values (${JSON.stringify(parts)}), ${words} words, ` +
			`${(words / wordsAMinute).toFixed(1)} minutes of reading`,
	)
/** The usual answers of a visit that was explained and agreed to; then the signature. */
async function sign({ press, read }: Hand, name: string, guardian?: string) {
	await expect(page.getByRole('heading', { level: 1, name: 'Sign' })).toBeFocused()
	await read(`${name}-sheet`)
	await press('Alt+n')
	await expect(button(/^Explained to .* with all options/)).toBeFocused()
	await read(`${name}-explained`)
	await press('Enter')
	await expect(radio('Interpreter', 'Not needed')).toBeFocused()
	await press('Space', 'Alt+n')
	await expect(radio('Chaperone', 'Offered, accepted')).toBeFocused()
	await press('ArrowRight', 'Alt+n')
	if (guardian) {
		await expect(radio('Came with', `${guardian}, guardian`)).toBeFocused()
		await press('Space', 'Alt+n')
	}
	await expect(signButton(page)).toBeFocused()
	await read(`${name}-sign`)
	await press('Enter')
	await expect(page.getByText(/^Signed as/)).toBeVisible({ timeout: 30_000 })
	await read(`${name}-signed`)
}

test('A: an adult with pain of the Achilles tendon, new, in under 200 keys', async () => {
	const walked = hand(page, known)
	const { press, value, enter, read } = walked
	await read('A01-players')
	await press('Shift+Tab')
	await expect(button('New player')).toBeFocused()
	await press('Enter')
	await expect(field('Given name')).toBeFocused()
	await read('A02-new-player')
	await enter('Dale', 'Merrick', '14 Mar 1997', 'm', 'Harrow Rovers')
	// an address that documents go to is typed twice
	await enter('dale@example.org', 'dale@example.org')
	await value('0550 111 222')
	await press('Control+Enter')
	// what comes next has the focus
	await expect(button('Start assessment')).toBeFocused()
	await read('A03-added')
	await press('Enter')
	await expect(field('What brought the player')).toBeFocused()
	await read('A04-play')
	await enter('Achilles pain, left, since August')
	await expect(box('Add a condition')).toBeFocused()
	await value('midportion')
	await expect(page.getByRole('listbox').getByRole('option')).toHaveText(
		/^mid-portion Achilles tendinopathy/,
	)
	await read('A05-condition')
	await press('Enter', 'Space', 'Enter', 'Space', 'Enter')
	await enter('6')
	await read('A06-condition')
	// nothing else: on to what is played
	await press('Enter')
	await expect(box('Football code')).toBeFocused()
	await enter('as', 'central midfielder', 'senior', 'ri', '1', '3', '6', '181', '79')
	await expect(button('Natural soft')).toBeFocused()
	await expect(box('Position')).toHaveValue('central midfielder')
	await read('A07-surfaces')
	await press('ArrowRight', 'Space', 'ArrowRight', 'ArrowRight', 'ArrowRight', 'Space')
	await press('Alt+a')
	await expect(field('Name')).toBeFocused()
	await read('A08-pair')
	await enter('match boots', 'firm', 'uk', '8', '278', '4')
	await press('Enter')
	await enter('7')
	await value('n')
	await read('A09-pair')
	const play = walked.keys

	await press('Alt+2')
	const asked = await answerAllNo(page, walked, 'A10-flags')
	expect(asked).toBeGreaterThan(8)
	await expect(button('On to Feet')).toBeFocused()
	await read('A11-flags')
	await press('Enter')
	const flags = walked.keys - play

	await expect(field('Heel to toe, left')).toBeFocused()
	await read('A12-feet')
	await enter('262 263', '264 264', '190', '191', '101', '102', '248', '250', '25')
	await press('=', 'Enter')
	await enter('66')
	await press('=', 'Enter')
	await read('A13-feet')
	await press('Alt+4')
	await expect(field('Knee to wall, left')).toBeFocused()
	await read('A14-ankles')
	await enter('8.0 8.2 8.1', '10.5 10.4 10.6', '35 36 35', '42 42 43', '4', '8', '14', '18', 'calf')
	await press('=', 'Enter')
	await expect(field('Foot posture index, six items, left')).toBeFocused()
	await read('A15-posture')
	await enter('1 1 1 0 1 1')
	await press('=', 'Enter')
	await enter('7', '7', 'neu')
	await press('=', 'Enter')
	await enter('68', '70', '22', '21', '14', '24')
	await read('A16-posture')
	const measured = walked.keys - play - flags

	await press('Alt+7')
	const before = walked.keys
	await settleAll(page, walked, 'A17')
	await expect(button('On to Sign')).toBeFocused()
	await press('Enter')
	const decided = walked.keys - before
	await sign(walked, 'A18')
	tell('A', walked, { play, flags, measured, decided })
	expect(decided).toBeLessThan(20)
	expect(walked.keys).toBeLessThan(170)
})

test('B: a growing girl of 12 with pain of both heels, her guardian beside her', async () => {
	const walked = hand(page, known)
	const { press, value, enter, read } = walked
	// what comes after a signature is in reach: the next player
	await press('Tab', 'Tab', 'Tab', 'Tab', 'Tab', 'Tab')
	await expect(page.getByRole('link', { name: 'Next player' })).toBeFocused()
	await press('Enter')
	await expect(field('Search players')).toBeFocused()
	await press('Shift+Tab', 'Enter')
	await expect(field('Given name')).toBeFocused()
	await enter('Mina', 'Sorrell', '2 Sep 2014', 'f', 'Kelda Juniors')
	await press('Enter', 'Enter', 'Enter')
	await expect(field('Guardian name')).toBeFocused()
	await read('B01-guardian')
	await enter('Orla Sorrell', 'mother', 'orla@example.org', 'orla@example.org', '0550 333 444')
	// her language is that of the papers
	await press('Enter')
	// past the last field Enter rests on what saves
	await expect(button('Save player')).toBeFocused()
	await press('Enter')
	await expect(button('Start assessment')).toBeFocused()
	await press('Enter')
	await expect(field('What brought the player')).toBeFocused()
	await read('B02-play')
	await enter('heel pain, both, after training')
	await value('heel pain')
	// what is usual at her age is what Enter takes
	await expect(page.getByRole('listbox').getByRole('option').first()).toHaveText(
		/^calcaneal apophysitis/,
	)
	await read('B03-condition')
	await press('Enter', 'ArrowRight', 'ArrowRight', 'Space', 'Enter', 'Space', 'Enter')
	await enter('5')
	await press('Enter')
	await expect(box('Football code')).toBeFocused()
	await enter('as', 'goalkeeper', 'junior', 'r', '1', '2', '5', '3', '11', '2', '152', '41')
	await press('ArrowRight', 'Space', 'Alt+a')
	await read('B04-pair')
	await enter('boots', 'artif', 'eu', '37', '236', '0')
	await press('Enter')
	await enter('5')
	await value('y')
	await read('B05-pair')

	await press('Alt+2')
	await answerAllNo(page, walked, 'B06-flags')
	// no limp was recorded by answering that there is none
	await expect(page.getByText('Only where the player limps now')).toBeVisible()
	await expect(button(/^Nothing held/)).toBeVisible()
	await expect(button('On to Feet')).toBeFocused()
	await press('Enter')
	await expect(field('Heel to toe, left')).toBeFocused()
	await enter('234 235', '236 236', '170', '171', '88', '89', '214', '216', '22')
	await press('=', 'Enter')
	await enter('58')
	await press('=', 'Enter')
	await expect(page.getByText(/stop wearing/).first()).toBeVisible()
	await read('B07-feet')
	await press('Alt+4')
	await enter('9 9.1 9', '9 9 9.2', '38 38 38', '38 39 38', '5', '5', '15', '15', 'calf')
	await press('=', 'Enter')
	await enter('1 1 1 1 1 1')
	await press('=')
	await read('B08-posture')
	await press('Alt+6')
	// stature and mass stand already: on to what is missing
	await expect(field('Sitting height')).toBeFocused()
	await enter('79.5', '166', '180')
	await read('B09-growth')
	await press('Alt+7')
	const before = walked.keys
	await settleAll(page, walked, 'B10')
	await expect(button('On to Sign')).toBeFocused()
	await press('Enter')
	const decided = walked.keys - before
	await sign(walked, 'B11', 'Orla Sorrell')
	tell('B', walked, { decided })
	expect(decided).toBeLessThan(20)
	expect(walked.keys).toBeLessThan(170)
})

test('C: a player who comes back with nothing new is settled in three minutes', async () => {
	await signedBefore(page)
	await page.goto(`${new URL(host.url).origin}/#/`)
	await page.reload()
	await expect(field('Search players')).toBeFocused()
	const walked = hand(page, known)
	const { press, value, enter, read } = walked
	await value('aldous')
	await expect(page.getByRole('row', { name: /Cleo Aldous/ })).toBeVisible()
	await expect(page.getByText('One player found.')).toBeVisible()
	await press('Enter')
	await expect(page.getByRole('heading', { level: 1, name: 'Cleo Aldous' })).toBeFocused()
	await read('C01-player')
	await press('Tab', 'Tab', 'Tab', 'Tab', 'Tab')
	await expect(button('Start assessment')).toBeFocused()
	await press('Enter')
	await expect(field('What brought the player')).toBeFocused()
	await read('C02-play')
	await press('Alt+t')
	await expect(box('Football code')).toHaveValue('association')
	await expect(field('Inside length')).toHaveValue('254')
	await expect(field('Comfort')).toHaveValue('')
	await read('C03-taken-over')
	await enter('no complaint, boots before the season')
	await press('Alt+2')
	await answerAllNo(page, walked, 'C04-flags')
	await press('Enter')
	await expect(field('Heel to toe, left')).toBeFocused()
	await enter('244 244', '245 245', '178', '179', '94', '94', '232', '233')
	await read('C05-feet')
	await press('Alt+4')
	await press('Enter', 'Enter')
	await expect(field('Lunge angle, left')).toBeFocused()
	await enter('42 42 42', '43 43 43')
	await read('C06-ankles')
	await press('Alt+7')
	const before = walked.keys
	await settleAll(page, walked, 'C07')
	await press('Enter')
	const decided = walked.keys - before
	await sign(walked, 'C08')
	tell('C', walked, { decided })
	const seconds = walked.keys * secondsAKey + (walked.words / wordsAMinute) * 60
	console.log(`C: ${Math.round(seconds)} seconds`)
	expect(seconds).toBeLessThan(180)
	await shot(page, 'C09-after', { fullPage: false })
})
