/** What the rules of toes, nails, skin and feeling say. */
import { alsoTo, sentence } from '../../sentence.ts'
import { amount, number } from '../format.ts'

export const skinAndNailSentences = {
	'footwear.toenails': sentence<{ leastMm: number; mostMm: number }>({
		clinician: ({ leastMm, mostMm }) =>
			`Toenails: depth, and ${number(leastMm)} to ${amount(mostMm, 'mm')} before the toes while ` +
			'standing; never one size down.',
		player: ({ leastMm, mostMm }) =>
			`Your toenails need room. Leave ${number(leastMm)} to ${amount(mostMm, 'mm')} in front of ` +
			'your toes when you stand. Never take a smaller size.',
	}),
	'footwear.hammer-toe': sentence({
		clinician: () => 'Rubbed toes: depth, soft upper, no seams over the forefoot.',
		player: () =>
			'Your toes must not rub. Look for depth, a soft upper and no seams over the front.',
	}),
	'footwear.sensation': alsoTo(
		sentence({
			clinician: () => 'Feet at risk: depth, soft upper without seams; no new boot without review.',
			player: () =>
				'The skin of your feet needs care. Look for depth and a soft upper without seams. Let us ' +
				'see each new boot before you wear it.',
		}),
		'doctor',
	),
	'footwear.skin-at-risk': alsoTo(
		sentence({
			clinician: () => 'Skin at risk: many low studs, none under a place of high pressure.',
			player: () => 'Wear many low studs. Have none under a place that is pressed hard.',
		}),
		'doctor',
	),
}
