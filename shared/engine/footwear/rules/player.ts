/** What body mass, growth and the place in the team ask of a shoe. */
import { belief, type FootwearRule, practice } from './rule.ts'

const contestPosition =
	/ruck|prop|lock|second row|front row|goalkeeper|centre half|key (forward|back)|number eight/

export const playerRules: readonly FootwearRule[] = [
	{
		id: 'heavy',
		needs: ['body.massKg'],
		when: (facts) =>
			facts.heavy && facts.massKg !== undefined
				? [{ measure: 'Body mass', value: facts.massKg, unit: 'kg' }]
				: [],
		says:
			'Heavy player: cushioning along the whole sole and a wide base. This is belief, not trial ' +
			'evidence.',
		seek: ['full-length-cushioning', 'wide-base'],
		avoid: ['low-mass'],
		basis: { ...belief, threshold: 'footwear.heavyKg' },
	},
	{
		id: 'lighter-runner',
		needs: ['body.massKg'],
		when: (facts) => facts.lighter,
		says:
			'Lighter adult runners in harder shoes had more injuries in one trial of running shoes; ' +
			'heavier runners showed no clear effect. For road shoes only: no trial of boots was found.',
		seek: ['full-length-cushioning'],
		avoid: [],
		basis: {
			source:
				'Malisoux 2020, Am J Sports Med 48:473 (n 848; hard shoe, lighter runners 1.80, heavier ' +
				'1.23 not significant)',
			strength: 'trial',
		},
	},
	{
		id: 'junior',
		needs: ['player.birthDate'],
		when: (facts) =>
			facts.adult ? [] : [{ measure: 'Age', value: Math.floor(facts.ageYears), unit: 'years' }],
		says:
			'Growing player: room for growth is measured, not guessed; many low studs and a soft ' +
			'upper.',
		seek: ['many-studs', 'soft-upper'],
		avoid: ['bladed-studs'],
		basis: practice,
	},
	{
		id: 'growth-spurt',
		needs: ['player.birthDate'],
		when: (facts) =>
			facts.growing.filter((reason) => reason.value === 'around' || reason.value === 'uncertain'),
		says:
			'Around the growth spurt: cushioned shoes for training, boots for matches, and measure the ' +
			'feet often.',
		seek: ['full-length-cushioning'],
		avoid: [],
		basis: practice,
	},
	{
		id: 'contest',
		needs: ['play.position'],
		when: (facts) =>
			contestPosition.test(facts.position) ? [{ measure: 'Position', value: facts.position }] : [],
		says:
			'Contest positions land and push often: cushioning along the whole sole and a wide base. ' +
			'This is belief, not trial evidence.',
		seek: ['full-length-cushioning', 'wide-base'],
		avoid: [],
		basis: belief,
	},
	{
		id: 'scrum',
		needs: ['play.position', 'play.code'],
		when: (facts) =>
			facts.code.startsWith('rugby') &&
			/prop|hooker|lock|second row|front row|scrum/.test(facts.position)
				? [{ measure: 'Code and position', value: `${facts.code}, ${facts.position}` }]
				: [],
		says: 'Scrum: more studs and a wide base to push from, within the stud limits of the code.',
		seek: ['many-studs', 'wide-base'],
		avoid: ['low-mass'],
		basis: practice,
	},
	{
		id: 'speed-position',
		needs: ['play.position'],
		when: (facts) =>
			/wing|full-?back|striker|forward pocket|half-?back|fly-?half/.test(facts.position)
				? [{ measure: 'Position', value: facts.position }]
				: [],
		says: 'Running positions often prefer a light boot: preference, not evidence.',
		seek: ['low-mass'],
		avoid: [],
		basis: belief,
	},
	{
		id: 'kicking-support',
		needs: ['play.position'],
		when: (facts) =>
			/goal ?kicker|kicker|fly-?half/.test(facts.position)
				? [{ measure: 'Position', value: facts.position }]
				: [],
		says: 'Kickers turn on the standing foot: a steady base and studs that let it turn.',
		seek: ['wide-base', 'low-rotational-grip'],
		avoid: [],
		basis: practice,
	},
]
