/** What the toes' joints, the metatarsals and the midfoot ask of a shoe. */
import { state } from '../../words/statement.ts'
import { type FootwearRule, practice } from './rule.ts'

export const forefootRules: readonly FootwearRule[] = [
	{
		id: 'sesamoid',
		rank: 'injury-now',
		needs: ['conditions'],
		conditions: ['sesamoid-pain'],
		seek: ['stiff-forefoot', 'stud-clear-of-first-joint'],
		avoid: ['flexible-forefoot'],
		strict: ['stud-clear-of-first-joint'],
		basis: {
			source: 'DeBiasio 2013, J Athl Train 48:601 (forefoot load); rest common practice, no source',
			strength: 'practice',
		},
	},
	{
		id: 'first-joint',
		rank: 'injury-now',
		needs: ['conditions', 'posture'],
		conditions: ['first-mtp-osteoarthritis', 'hallux-limitus'],
		found: (facts) => facts.stiffFirstJoint,
		seek: ['stiff-forefoot', 'deep-toe-box'],
		avoid: ['flexible-forefoot'],
		practiceOnly: ['deep-toe-box'],
		basis: {
			source:
				'Munteanu 2021 (a stiff insert; adults, about 57 years: carried over to players and shoes)',
			strength: 'trial',
		},
	},
	{
		id: 'turf-toe',
		rank: 'injury-now',
		needs: ['conditions'],
		conditions: ['turf-toe'],
		seek: ['stiff-forefoot', 'low-rotational-grip'],
		avoid: ['flexible-forefoot'],
		basis: { source: 'Rodeo 1990, Am J Sports Med 18:280', strength: 'cohort' },
	},
	{
		id: 'forefoot-pain',
		rank: 'injury-now',
		needs: ['conditions'],
		conditions: ['metatarsalgia', 'second-metatarsal-stress-fracture'],
		seek: ['many-studs', 'wide-fitting', 'removable-liner'],
		avoid: ['bladed-studs', 'long-studs'],
		basis: practice,
	},
	{
		id: 'neuroma',
		rank: 'injury-now',
		needs: ['conditions'],
		conditions: ['interdigital-neuroma'],
		seek: ['wide-fitting', 'soft-upper', 'removable-liner'],
		avoid: ['narrow-fitting'],
		basis: practice,
	},
	{
		id: 'bunion',
		rank: 'injury-now',
		needs: ['conditions'],
		conditions: ['hallux-valgus', 'bunionette'],
		seek: ['soft-upper', 'smooth-forefoot-seams', 'wide-fitting'],
		avoid: ['narrow-fitting'],
		basis: practice,
	},
	{
		id: 'bunionette-stud',
		rank: 'injury-now',
		needs: ['conditions'],
		conditions: ['bunionette'],
		seek: ['stud-clear-of-fifth-metatarsal', 'smooth-forefoot-seams'],
		avoid: [],
		basis: practice,
	},
	{
		id: 'fifth-metatarsal',
		rank: 'injury-now',
		needs: ['conditions'],
		conditions: ['fifth-metatarsal-stress-fracture'],
		when: 'ever',
		says: (_facts, { value }) =>
			state('footwear.fifth-metatarsal', { turfShare: value('season.turfShare') }),
		seek: ['round-studs', 'stud-clear-of-fifth-metatarsal', 'wide-base'],
		avoid: ['bladed-studs', 'narrow-fitting'],
		strict: ['stud-clear-of-fifth-metatarsal'],
		practiceOnly: ['stud-clear-of-fifth-metatarsal', 'wide-base', 'narrow-fitting'],
		basis: {
			source:
				'Bentley 2011, Foot Ankle Surg 17:140; Miyamori 2019, BMJ Open 9:e022864 (turf, odds ' +
				'ratio 3.44)',
			strength: 'cohort',
		},
	},
	{
		id: 'fifth-apophysis',
		rank: 'injury-now',
		needs: ['conditions'],
		conditions: ['fifth-metatarsal-apophysitis'],
		of: 'minors',
		seek: ['wide-fitting', 'stud-clear-of-fifth-metatarsal', 'soft-upper'],
		avoid: ['narrow-fitting'],
		basis: practice,
	},
	{
		id: 'navicular',
		rank: 'injury-now',
		needs: ['conditions'],
		conditions: ['navicular-stress-fracture'],
		when: 'ever',
		seek: ['torsional-stiffness', 'full-length-cushioning'],
		avoid: [],
		basis: practice,
	},
]
