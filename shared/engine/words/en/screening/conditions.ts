/** Recorded conditions that by themselves call for somebody else. */
import { sentence } from '../../sentence.ts'
import { noSport } from './no-sport.ts'

export const recordedConditionSentences = {
	'screening.condition-navicular-stress-fracture': sentence({
		clinician: () =>
			'Current navicular stress fracture: no impact; imaging and medical care first.',
		player: () =>
			'No running or jumping. A bone in the middle of your foot is cracked. A doctor must treat ' +
			'it first.',
		guardian: () =>
			'No running or jumping. A bone in the middle of the foot is cracked. A doctor must treat ' +
			'it first.',
		doctor: () => 'Current navicular stress fracture; imaging and medical care before any load.',
		coach: noSport,
	}),
	'screening.condition-fifth-metatarsal-stress-fracture': sentence({
		clinician: () =>
			'Current fifth metatarsal stress fracture: no impact; imaging and surgical opinion first.',
		player: () =>
			'No running or jumping. A bone at the outer edge of your foot is cracked. A doctor must ' +
			'treat it first.',
		guardian: () =>
			'No running or jumping. A bone at the outer edge of the foot is cracked. A doctor must ' +
			'treat it first.',
		doctor: () => 'Current fifth metatarsal stress fracture; imaging and surgical opinion, please.',
		coach: noSport,
	}),
	'screening.condition-second-metatarsal-stress-fracture': sentence({
		clinician: () =>
			'Current second metatarsal stress fracture: no impact until imaging has shown the site.',
		player: () =>
			'No running or jumping. A bone in your forefoot is cracked. A picture must show where first.',
		guardian: () =>
			'No running or jumping. A bone in the forefoot is cracked. A picture must show where first.',
		doctor: () => 'Current second metatarsal stress fracture; imaging of the site, please.',
		coach: noSport,
	}),
	'screening.condition-neuropathy': sentence({
		clinician: () => 'Neuropathy: write to the doctor; no new footwear without review.',
		player: () => 'Your feet feel less than they should. They must be checked first.',
		guardian: () => 'The feet feel less than they should. They must be checked first.',
		doctor: () => 'Known neuropathy of the feet; no new footwear here without review.',
	}),
	'screening.condition-previous-foot-ulcer': sentence({
		clinician: () =>
			'Previous foot ulcer: high-risk foot, write to the foot protection service; no new ' +
			'footwear without review.',
		player: () =>
			'You had a sore on your foot before, so it can come back. A foot clinic should see you.',
		guardian: () =>
			'There was a sore on the foot before, so it can come back. A foot clinic should look at it.',
		doctor: () => 'Previous foot ulcer, so a foot at high risk; foot protection service, please.',
	}),
	'screening.condition-posterior-tibial-tendinopathy': sentence({
		clinician: () =>
			'Posterior tibial pain and no heel rise on that leg: the tendon may have given way. Write to ' +
			'the doctor; an insert alone does not answer it.',
		player: () =>
			'You cannot rise on the toes of one leg. A tendon on the inside of your ankle may be weak. ' +
			'We will write to your doctor.',
		guardian: () =>
			'The player cannot rise on the toes of one leg. A tendon on the inside of the ankle may be ' +
			'weak. We will write to the doctor.',
		doctor: () =>
			'Posterior tibial tendinopathy without a single-leg heel rise; assessment of the tendon, ' +
			'please.',
	}),
	'screening.condition-diabetes': sentence({
		clinician: () =>
			'Diabetes: make sure that the foot check is up to date and the diabetes team knows of the ' +
			'sport.',
		player: () => 'Keep your foot check up to date. Tell your diabetes team which sport you play.',
		guardian: () => 'Keep the foot check up to date. Tell the diabetes team which sport is played.',
		doctor: () => 'Diabetes; please confirm that the foot check is up to date.',
	}),
}
