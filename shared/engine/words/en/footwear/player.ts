/** What the rules of body mass, growth and the place in the team say. */
import { sentence } from '../../sentence.ts'
import { listed } from '../format.ts'

/** Positions by the names of the list. */
type Positions = { positions: readonly string[] }
const stages = {
	around: 'Around the growth spurt',
	uncertain: 'The stage of growth is not certain, so as if around the growth spurt',
}
export const playerRuleSentences = {
	'footwear.heavy': sentence({
		clinician: () =>
			'Heavy player: cushioning along the whole sole and a wide base. This is belief, not trial ' +
			'evidence.',
		player: () => 'Cushioning along the whole sole and a wide, steady base suit you.',
		private: 'weight',
	}),
	'footwear.lighter-runner': sentence({
		clinician: () =>
			'Lighter adult runners in harder shoes had more injuries in one trial of running shoes; ' +
			'heavier runners showed no clear effect. For road shoes only: no trial of boots was found.',
		player: () => 'For runs on roads choose shoes with cushioning.',
		private: 'weight',
	}),
	'footwear.junior': sentence({
		clinician: () =>
			'Growing player: room for growth is measured, not guessed; many low studs and a soft upper.',
		player: () =>
			'You are still growing. We measure how much room you need. Look for many low studs and a ' +
			'soft upper.',
	}),
	'footwear.growth-spurt': sentence<{ band: keyof typeof stages }>({
		clinician: ({ band }) =>
			`${stages[band]}: cushioned shoes for training, boots for matches, ` +
			'and measure the feet often.',
		player: () =>
			'Train in cushioned shoes and keep boots for matches. Have your feet measured often.',
		coach: () => 'Cushioned shoes for training, boots for matches.',
	}),
	'footwear.contest': sentence<Positions>({
		clinician: ({ positions }) =>
			`${listed(positions)}: contest positions land and push often, so cushioning along the ` +
			'whole sole and a wide base. This is belief, not trial evidence.',
		player: () =>
			'In your position you land and push often. A cushioned sole and a wide base may help. ' +
			'This is not proven.',
	}),
	'footwear.scrum': sentence<Positions>({
		clinician: ({ positions }) =>
			`${listed(positions)}: more studs and a wide base to push from in the scrum, within the ` +
			'stud limits of the code.',
		player: () =>
			'You push in the scrum. More studs and a wide base help. Keep to the stud rules of your ' +
			'game.',
	}),
	'footwear.speed-position': sentence<Positions>({
		clinician: ({ positions }) =>
			`${listed(positions)}: running positions often prefer a light boot: preference, not evidence.`,
		player: () => 'Players in your position often like a light boot. It is a matter of taste.',
	}),
	'footwear.kicking-support': sentence<Positions>({
		clinician: ({ positions }) =>
			`${listed(positions)}: kickers turn on the standing foot, so a steady base and studs that ` +
			'let it turn.',
		player: () =>
			'When you kick, you turn on the other foot. Look for a steady base and studs that let it ' +
			'turn.',
	}),
}
