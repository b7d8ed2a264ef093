/** Torn tendon and ligament: heel cord, high ankle sprain, midfoot. */
import { allOf, anyOf } from '../answers.ts'
import { type Ground, type SignRow, signOfSide } from './sign-row.ts'

const midfootStudies: Ground = {
	source: 'Ponkilainen 2020; J Foot Ankle Res 2023, s13047-023-00608-0',
	strength: 'cohort',
}
export const tendonAndLigamentSigns: readonly SignRow[] = [
	signOfSide('achilles', {
		id: 'achilles-rupture',
		holds: ({ noMovementOnSqueeze, footDropsKneeBent, gap }) =>
			anyOf(noMovementOnSqueeze, footDropsKneeBent, gap),
		action: 'same-day',
		says:
			'Achilles rupture suspected: same-day emergency department, ankle supported with ' +
			'the toes down, no insert. In the study every rupture had two or more of the three ' +
			'tests positive; walking, or even a heel rise, does not exclude it.',
		notMet:
			'None of the three rupture tests is positive. About one rupture in five was missed at ' +
			'first: test again if push-off stays weak.',
		ground: {
			source:
				'Maffulli 1998, Am J Sports Med 26:266 (calf squeeze .96 and .93, knee bent .88 and ' +
				'.85, gap .73 and .89, sensitivity and specificity)',
			strength: 'cohort',
		},
	}),
	signOfSide('syndesmosis', {
		id: 'syndesmosis',
		holds: ({ ligamentTenderness, squeezePain, rotationPain, cannotHop }) =>
			allOf(ligamentTenderness, anyOf(squeezePain, rotationPain, cannotHop)),
		action: 'imaging',
		says: 'High ankle sprain suspected: imaging, and protect in a boot meanwhile.',
		notMet:
			'High ankle sprain rule not met. In the first day the tests miss many: examine again on ' +
			'day 5.',
		ground: { source: 'Sman 2015, Br J Sports Med 49:323 (n 87)', strength: 'cohort' },
	}),
	signOfSide('lisfranc', {
		id: 'lisfranc',
		holds: ({ midfootPain, plantarBruise, cannotHeelRise, stressPain }) =>
			allOf(midfootPain, anyOf(plantarBruise, cannotHeelRise, stressPain)),
		action: 'imaging',
		says:
			'Midfoot ligament injury suspected: weight-bearing films of both feet or CT, no ' +
			'weight on the foot meanwhile. Films without weight miss about one in four.',
		notMet:
			'Midfoot ligament rule not met. One in three to five is missed at first: examine again ' +
			'within a week if the midfoot still hurts.',
		ground: midfootStudies,
	}),
	signOfSide('lisfranc', {
		id: 'lisfranc-no-weight',
		holds: ({ midfootPain, plantarBruise, cannotBearWeight }) =>
			allOf(anyOf(midfootPain, plantarBruise), cannotBearWeight),
		action: 'same-day',
		says:
			'Midfoot injury and no weight can be borne: emergency department the same day, no ' +
			'weight on the foot.',
		ground: midfootStudies,
	}),
]
