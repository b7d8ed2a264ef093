/** What the rules of the ankle say. */
import { sentence } from '../../sentence.ts'

export const ankleRuleSentences = {
	'footwear.restricted-ankle': sentence({
		clinician: () => 'Restricted ankle range: a raised heel eases the demand on the calf.',
		player: () => 'A heel higher than the front asks less of your calf.',
	}),
	'footwear.anterior-ankle': sentence({
		clinician: () => 'A pinch at the front of the ankle is eased by a raised heel.',
		player: () => 'Your ankle pinches at the front. A heel higher than the front eases it.',
	}),
	'footwear.posterior-ankle': sentence({
		clinician: () =>
			'Impingement at the back of the ankle: a high heel and a stiff high collar press there.',
		player: () =>
			'Your ankle is sore at the back. A high heel or a stiff, high collar press there.',
	}),
	'footwear.ankle-instability': sentence({
		clinician: () =>
			'Ankle that gives way, now or before: wide base, moderate studs, less grip in turning, ' +
			'room for a brace.',
		player: () => 'Look for a wide base and studs that let the foot turn. Leave room for a brace.',
	}),
	'footwear.ankle-support': sentence({
		clinician: () =>
			'Ankle or inner tendon that needs holding: a counter that stands high and firm.',
		player: () => 'Your ankle needs holding. Look for a heel cup that is high and firm.',
	}),
	'footwear.syndesmosis': sentence({
		clinician: () => 'High ankle sprain: less grip in turning.',
		player: () => 'Wear studs that let the foot turn.',
	}),
	'footwear.inner-tendon': sentence({
		clinician: () =>
			'Inner ankle or sinus tarsi: a midfoot that does not twist and a liner that comes out for ' +
			'an insert.',
		player: () => 'Look for a middle that does not twist, and a liner that comes out.',
	}),
	'footwear.outer-tendon': sentence({
		clinician: () => 'Outer ankle tendons: a wide outer platform and a steady heel.',
		player: () => 'A wide base and a steady heel help.',
	}),
}
