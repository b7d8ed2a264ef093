/** Torn tendon and ligament: heel cord, high ankle sprain, midfoot. */
import { state } from '../../words/statement.ts'
import { allOf, anyOf } from '../answers.ts'
import { type Ground, type SignRow, signOfSide } from './sign-row.ts'

const midfootStudies: Ground = {
	source: 'Ponkilainen 2020; J Foot Ankle Res 2023, s13047-023-00608-0',
	strength: 'cohort',
}
export const tendonAndLigamentSigns: readonly SignRow[] = [
	signOfSide('achilles', 'achilles-rupture', {
		holds: ({ noMovementOnSqueeze, footDropsKneeBent, gap }) =>
			anyOf(noMovementOnSqueeze, footDropsKneeBent, gap),
		action: 'same-day',
		says: () => state('screening.achilles-rupture'),
		notMet: () => state('screening.achilles-rupture-not-met'),
		ground: {
			source:
				'Maffulli 1998, Am J Sports Med 26:266 (calf squeeze .96 and .93, knee bent .88 and ' +
				'.85, gap .73 and .89, sensitivity and specificity)',
			strength: 'cohort',
		},
	}),
	signOfSide('syndesmosis', 'syndesmosis', {
		holds: ({ ligamentTenderness, squeezePain, rotationPain, cannotHop }) =>
			allOf(ligamentTenderness, anyOf(squeezePain, rotationPain, cannotHop)),
		action: 'imaging',
		says: () => state('screening.syndesmosis'),
		notMet: (_, { protocol }) =>
			state('screening.syndesmosis-not-met', {
				day: protocol.value('screening.syndesmosisAgainDay'),
			}),
		ground: { source: 'Sman 2015, Br J Sports Med 49:323 (n 87)', strength: 'cohort' },
	}),
	signOfSide('lisfranc', 'lisfranc', {
		holds: ({ midfootPain, plantarBruise, cannotHeelRise, stressPain }) =>
			allOf(midfootPain, anyOf(plantarBruise, cannotHeelRise, stressPain)),
		action: 'imaging',
		says: () => state('screening.lisfranc'),
		notMet: (_, { protocol }) =>
			state('screening.lisfranc-not-met', {
				days: protocol.value('screening.lisfrancAgainDays'),
			}),
		ground: midfootStudies,
	}),
	signOfSide('lisfranc', 'lisfranc-no-weight', {
		holds: ({ midfootPain, plantarBruise, cannotBearWeight }) =>
			allOf(anyOf(midfootPain, plantarBruise), cannotBearWeight),
		action: 'same-day',
		says: () => state('screening.lisfranc-no-weight'),
		ground: midfootStudies,
	}),
]
