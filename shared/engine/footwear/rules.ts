/**
 * The footwear rules: when, what it says, what to seek and avoid, and on what basis. One row a
 * rule.
 */
import type { Because, Strength } from '../protocol/basis.ts'
import { type Feature, type Surface, termWords } from '../visit/terms.ts'
import type { Facts } from './facts.ts'

export interface FootwearRule {
	id: string
	/** Visit paths it reads: with none of them recorded it cannot apply. */
	needs: readonly string[]
	/** The reasons that make the rule apply; none: it does not. */
	when(facts: Facts): Because[]
	says: string
	seek: readonly Feature[]
	avoid: readonly Feature[]
	basis: {
		source: string
		strength: Strength
		threshold?: 'footwear.broadZ' | 'footwear.narrowZ' | 'footwear.heavyKg'
	}
}
const practice = { source: 'common practice, no source', strength: 'practice' } as const
const belief = {
	source: 'common practice, no source: belief, not trial evidence',
	strength: 'practice',
} as const
const rule = (
	id: string,
	needs: readonly string[],
	when: FootwearRule['when'],
	says: string,
	seek: readonly Feature[],
	avoid: readonly Feature[],
	basis: FootwearRule['basis'] = practice,
): FootwearRule => ({ id, needs, when, says, seek, avoid, basis })
const on = (f: Facts, ...surfaces: Surface[]): Because[] =>
	f.surfaces
		.filter((surface) => surfaces.includes(surface))
		.map((surface) => ({ measure: 'Surface', value: termWords(surface) }))

export const footwearRules: readonly FootwearRule[] = [
	rule(
		'broad',
		['feet'],
		(f) => f.broad,
		'Broad foot for its length: a wide and deep forefoot in an upper that gives; lacing that ' +
			'skips the lowest rows adds room.',
		['wide-fitting', 'deep-toe-box', 'soft-upper'],
		['narrow-fitting'],
		{ ...practice, threshold: 'footwear.broadZ' },
	),
	rule(
		'narrow',
		['feet'],
		(f) => f.narrow,
		'Narrow foot: most boots are low in volume already. Try a thicker sock and lacing first, a ' +
			'narrow fitting last.',
		[],
		['wide-fitting'],
		{ ...practice, threshold: 'footwear.narrowZ' },
	),
	rule(
		'first-ray',
		['posture'],
		(f) => f.plantarflexedFirstRay,
		'A plantarflexed first ray and a stud under the first joint concentrate pressure there: ' +
			'choose a sole without it, or have that stud lowered.',
		['stud-clear-of-first-joint'],
		[],
	),
	rule(
		'restricted-ankle',
		['ankles'],
		(f) => f.restricted,
		'Restricted ankle range: a raised heel eases the demand on the calf.',
		['raised-heel'],
		['low-heel'],
	),
	rule(
		'anterior-ankle',
		['conditions', 'ankles'],
		(f) => [...f.pinched, ...f.now('anterior-ankle-impingement')],
		'A pinch at the front of the ankle is eased by a raised heel.',
		['raised-heel'],
		['low-heel'],
	),
	rule(
		'posterior-ankle',
		['conditions'],
		(f) => f.now('posterior-ankle-impingement'),
		'Impingement at the back of the ankle: a high heel and a stiff high collar press there.',
		['low-heel-collar'],
		['raised-heel'],
	),
	rule(
		'growing-heel',
		['conditions'],
		(f) => f.now('calcaneal-apophysitis'),
		'Growing heel: raise the heel in both shoes, cushioned heel and many low studs; keep off ' +
			'hard ground in studs.',
		['raised-heel', 'full-length-cushioning', 'many-studs'],
		['low-heel'],
		{
			source:
				'James et al., Br J Sports Med 2016;50:1268-1275 (heel raise better at 1 to 2 months, ' +
				'no difference later); Rodriguez-Sanz 2018',
			strength: 'trial',
		},
	),
	rule(
		'achilles-insertional',
		['conditions'],
		(f) => f.now('achilles-insertional', 'haglund-deformity'),
		'Back of the heel: a raised heel and a soft or low counter take pressure off the tendon.',
		['raised-heel', 'soft-heel-counter', 'low-heel-collar'],
		['firm-heel-counter', 'low-heel'],
		{ source: 'NHS leaflet; heights common practice, no source', strength: 'practice' },
	),
	rule(
		'achilles-midportion',
		['conditions'],
		(f) => f.now('achilles-midportion', 'calf-strain'),
		'Achilles or calf: a raised heel lowers the demand.',
		['raised-heel'],
		['low-heel'],
		{
			source: 'Rabusin 2021, Br J Sports Med 55:486 (12 mm lifts, daily shoes, not boots)',
			strength: 'trial',
		},
	),
	rule(
		'hard-counter',
		['conditions'],
		(f) =>
			f.now(
				'achilles-insertional',
				'achilles-midportion',
				'haglund-deformity',
				'calcaneal-apophysitis',
			),
		'Sore tendon or growing heel: a stiff, hard counter irritates the back of the heel. A soft ' +
			'or low counter and collar.',
		['soft-heel-counter', 'low-heel-collar'],
		['firm-heel-counter'],
	),
	rule(
		'plantar-heel',
		['conditions'],
		(f) => f.now('plantar-heel-pain'),
		'Heel pain under the foot: firm heel cup, a midfoot that does not twist, some heel height.',
		['firm-heel-counter', 'torsional-stiffness', 'raised-heel'],
		['low-heel'],
	),
	rule(
		'sesamoid',
		['conditions'],
		(f) => f.now('sesamoid-pain'),
		'Sesamoid pain: stiff forefoot, no stud under the first joint, some heel height but no ' +
			'steep one.',
		['stiff-forefoot', 'stud-clear-of-first-joint'],
		['flexible-forefoot'],
		{
			source: 'DeBiasio 2013, J Athl Train 48:601 (forefoot load); rest common practice, no source',
			strength: 'practice',
		},
	),
	rule(
		'first-joint',
		['conditions', 'posture'],
		(f) => [...f.stiffFirstJoint, ...f.now('first-mtp-osteoarthritis', 'hallux-limitus')],
		'Stiff first joint: a stiff forefoot plate limits its bend; depth over the joint.',
		['stiff-forefoot', 'deep-toe-box'],
		['flexible-forefoot'],
		{
			source: 'Munteanu 2021 (adults, about 57 years: carried over to players)',
			strength: 'trial',
		},
	),
	rule(
		'turf-toe',
		['conditions'],
		(f) => f.now('turf-toe'),
		'Turf toe: a bendy forefoot with high grip goes with more bending back of the toe.',
		['stiff-forefoot', 'low-rotational-grip'],
		['flexible-forefoot'],
		{ source: 'Rodeo 1990, Am J Sports Med 18:280', strength: 'cohort' },
	),
	rule(
		'forefoot-pain',
		['conditions'],
		(f) => f.now('metatarsalgia', 'second-metatarsal-stress-fracture'),
		'Forefoot pain: more contact points and a wider forefoot spread the load.',
		['many-studs', 'wide-fitting', 'removable-liner'],
		['bladed-studs', 'long-studs'],
	),
	rule(
		'neuroma',
		['conditions'],
		(f) => f.now('interdigital-neuroma'),
		'Neuroma: width and cushioning at the ball; a tight forefoot squeezes it.',
		['wide-fitting', 'soft-upper', 'removable-liner'],
		['narrow-fitting'],
	),
	rule(
		'bunion',
		['conditions'],
		(f) => f.now('hallux-valgus', 'bunionette'),
		'Bunion: soft upper, no seam over the joint, a wide last.',
		['soft-upper', 'smooth-forefoot-seams', 'wide-fitting'],
		['narrow-fitting'],
	),
	rule(
		'fifth-metatarsal',
		['conditions'],
		(f) => f.ever('fifth-metatarsal-stress-fracture'),
		'Fifth metatarsal stress fracture, now or before: round studs, none under the fifth ' +
			'metatarsal, a wide platform; keep the share of artificial turf below four fifths.',
		['round-studs', 'stud-clear-of-fifth-metatarsal', 'wide-base'],
		['bladed-studs', 'narrow-fitting'],
		{
			source:
				'Bentley 2011, Foot Ankle Surg 17:140; Miyamori 2019, BMJ Open 9:e022864 (turf, odds ' +
				'ratio 3.44)',
			strength: 'cohort',
		},
	),
	rule(
		'fifth-apophysis',
		['conditions'],
		(f) => f.now('fifth-metatarsal-apophysitis'),
		'Growing base of the fifth metatarsal: width and softness at the outer border.',
		['wide-fitting', 'stud-clear-of-fifth-metatarsal', 'soft-upper'],
		['narrow-fitting'],
	),
	rule(
		'navicular',
		['conditions'],
		(f) => f.ever('navicular-stress-fracture'),
		'Navicular stress fracture, now or before: a midfoot that does not twist and some cushioning.',
		['torsional-stiffness', 'full-length-cushioning'],
		[],
	),
	rule(
		'cavus',
		['conditions', 'posture'],
		(f) => [...f.supinated, ...f.now('cavus-foot-pain')],
		'High arch: cushioning and a wide outer platform; bladed soles load the outer border.',
		['full-length-cushioning', 'wide-base', 'round-studs'],
		['bladed-studs'],
		{
			source: 'Bentley 2011, Foot Ankle Surg 17:140; rest common practice, no source',
			strength: 'practice',
		},
	),
	rule(
		'pronated',
		['conditions', 'posture'],
		(f) => [...f.pronated, ...f.now('flexible-flatfoot-pain')],
		'Flat foot: a firm counter and a stiff midfoot hold an insert; the liner must come out.',
		['firm-heel-counter', 'torsional-stiffness', 'removable-liner'],
		['soft-heel-counter'],
	),
	rule(
		'ankle-instability',
		['conditions'],
		(f) => f.ever('lateral-ankle-instability'),
		'Ankle that gives way, now or before: wide base, moderate studs, less grip in turning, room ' +
			'for a brace.',
		['wide-base', 'short-studs', 'low-rotational-grip'],
		['bladed-studs'],
		{
			source: 'Thomson 2015, Br J Sports Med 49:1245; rest common practice, no source',
			strength: 'cohort',
		},
	),
	rule(
		'syndesmosis',
		['conditions'],
		(f) => f.now('syndesmosis-sprain'),
		'High ankle sprain: less grip in turning.',
		['low-rotational-grip', 'wide-base'],
		['bladed-studs'],
	),
	rule(
		'acl',
		['conditions'],
		(f) => f.ever('acl-history'),
		'ACL injury, now or before: round studs and less grip in turning. High grip has been ' +
			'associated with about twice the lower-limb injuries.',
		['round-studs', 'low-rotational-grip'],
		['bladed-studs'],
		{ source: 'Thomson 2015, Br J Sports Med 49:1245 (4972 men)', strength: 'cohort' },
	),
	rule(
		'toenails',
		['conditions'],
		(f) => f.now('ingrown-toenail', 'subungual-haematoma'),
		'Toenails: depth and 8 to 12 mm before the toes while standing; never one size down.',
		['deep-toe-box'],
		['narrow-fitting'],
	),
	rule(
		'hammer-toe',
		['conditions'],
		(f) => f.now('hammer-toe', 'blister'),
		'Rubbed toes: depth, soft upper, no seams over the forefoot.',
		['deep-toe-box', 'soft-upper', 'smooth-forefoot-seams'],
		[],
	),
	rule(
		'sensation',
		['conditions'],
		(f) => f.ever('neuropathy', 'previous-foot-ulcer', 'diabetes'),
		'Feet at risk: depth, soft upper without seams; no new boot without review.',
		['deep-toe-box', 'soft-upper', 'smooth-forefoot-seams'],
		['narrow-fitting'],
		{ source: 'NICE NG19', strength: 'guideline' },
	),
	rule(
		'shin-knee',
		['conditions'],
		(f) =>
			f.now(
				'shin-pain',
				'patellofemoral-pain',
				'patellar-tendinopathy',
				'tibial-tubercle-apophysitis',
			),
		'Shin or knee pain: cushioning for training, and studs that turn easily.',
		['full-length-cushioning', 'low-rotational-grip'],
		[],
	),
	rule(
		'leg-length',
		['conditions'],
		(f) => f.now('leg-length-difference'),
		'Leg-length difference: a liner that comes out leaves room for a raise.',
		['removable-liner'],
		[],
	),
	rule(
		'hypermobile',
		['conditions'],
		(f) => f.now('hypermobility'),
		'Very mobile joints: a steadier boot.',
		['firm-heel-counter', 'torsional-stiffness', 'wide-base'],
		[],
	),
	rule(
		'heavy',
		['body.massKg'],
		(f) =>
			f.heavy && f.massKg !== undefined
				? [{ measure: 'Body mass', value: f.massKg, unit: 'kg' }]
				: [],
		'Heavy player: cushioning along the whole sole and a wide base. This is belief, not trial ' +
			'evidence.',
		['full-length-cushioning', 'wide-base'],
		['low-mass'],
		{ ...belief, threshold: 'footwear.heavyKg' },
	),
	rule(
		'contest',
		['play.position'],
		(f) =>
			/ruck|prop|lock|second row|front row|goalkeeper|centre half|key (forward|back)|number eight/.test(
				f.position,
			)
				? [{ measure: 'Position', value: f.position }]
				: [],
		'Contest positions land and push often: cushioning along the whole sole and a wide base. ' +
			'This is belief, not trial evidence.',
		['full-length-cushioning', 'wide-base'],
		[],
		belief,
	),
	rule(
		'artificial',
		['play.surfaces'],
		(f) =>
			f.surfaces.includes('artificial-3g') || f.surfaces.includes('artificial-sand')
				? [{ measure: 'Surface', value: 'artificial' }]
				: [],
		'Artificial ground: many low, evenly spread studs; soft-ground soles are unsuitable there.',
		['many-studs', 'short-studs'],
		['bladed-studs'],
		{ source: 'Footwear Science traction project', strength: 'expert' },
	),
	rule(
		'hard-ground',
		['play.surfaces'],
		(f) =>
			f.surfaces.includes('natural-hard') ? [{ measure: 'Surface', value: 'natural, hard' }] : [],
		'Hard ground: more and shorter studs spread the pressure.',
		['many-studs', 'short-studs'],
		[],
	),
	rule(
		'junior',
		['player.birthDate'],
		(f) => (f.adult ? [] : [{ measure: 'Age', value: Math.floor(f.ageYears), unit: 'years' }]),
		'Growing player: room for growth is measured, not guessed; many low studs and a soft upper.',
		['many-studs', 'soft-upper'],
		['bladed-studs'],
	),
	rule(
		'growth-spurt',
		['player.birthDate'],
		(f) => f.growing.filter((reason) => reason.value === 'around' || reason.value === 'uncertain'),
		'Around the growth spurt: cushioned shoes for training, boots for matches, and measure the ' +
			'feet often.',
		['full-length-cushioning'],
		[],
	),
	rule(
		'unequal-feet',
		['feet'],
		(f) => f.longer,
		'Feet of different length: fit the longer foot; a liner that comes out lets the shorter ' +
			'side be padded.',
		['removable-liner'],
		[],
	),
	rule(
		'heel-collar',
		['conditions'],
		(f) => f.now('haglund-deformity', 'blister'),
		'Bump or blister at the back of the heel: a padded collar, and no hard edge where it rubs.',
		['padded-collar'],
		['firm-heel-counter'],
	),
	rule(
		'ankle-support',
		['conditions'],
		(f) => f.now('lateral-ankle-instability', 'posterior-tibial-tendinopathy'),
		'Ankle or inner tendon that needs holding: a counter that stands high and firm.',
		['high-heel-counter', 'firm-heel-counter'],
		['soft-heel-counter'],
	),
	rule(
		'calf-lever',
		['conditions'],
		(f) => f.now('achilles-midportion', 'achilles-insertional', 'calf-strain'),
		'Achilles or calf: a forefoot that bends shortens the lever on the calf. This is belief, ' +
			'not trial evidence.',
		['flexible-forefoot'],
		['stiff-forefoot'],
		belief,
	),
	rule(
		'calf-history',
		['conditions'],
		(f) => f.ever('achilles-midportion', 'calf-strain'),
		'Achilles or calf trouble, now or before: no sudden change to a flat sole.',
		[],
		['low-heel'],
	),
	rule(
		'inner-tendon',
		['conditions'],
		(f) => f.now('posterior-tibial-tendinopathy', 'sinus-tarsi-pain'),
		'Inner ankle or sinus tarsi: a midfoot that does not twist and a liner that comes out for ' +
			'an insert.',
		['torsional-stiffness', 'removable-liner'],
		[],
	),
	rule(
		'outer-tendon',
		['conditions'],
		(f) => f.now('peroneal-tendinopathy'),
		'Outer ankle tendons: a wide outer platform and a steady heel.',
		['wide-base', 'firm-heel-counter'],
		['bladed-studs'],
	),
	rule(
		'heel-pad',
		['conditions'],
		(f) => f.now('heel-fat-pad-pain'),
		'Sore heel pad: a cushioned heel inside a firm cup, and more studs under the heel.',
		['full-length-cushioning', 'firm-heel-counter', 'many-studs'],
		[],
	),
	rule(
		'knee-wear',
		['conditions'],
		(f) => f.now('knee-osteoarthritis'),
		'Knee osteoarthritis: cushioning for training and studs that turn easily.',
		['full-length-cushioning', 'low-rotational-grip'],
		[],
	),
	rule(
		'bunionette-stud',
		['conditions'],
		(f) => f.now('bunionette'),
		'Bunion of the little toe: no stud and no seam under or beside the fifth head.',
		['stud-clear-of-fifth-metatarsal', 'smooth-forefoot-seams'],
		[],
	),
	rule(
		'first-ray-mobile',
		['posture'],
		(f) => f.mobileFirstRay,
		'Very mobile first ray: a forefoot that does not give under it. The hand test agrees poorly ' +
			'between examiners.',
		['stiff-forefoot'],
		[],
	),
	rule(
		'high-instep',
		['conditions', 'posture'],
		(f) => [...f.supinated, ...f.now('cavus-foot-pain')],
		'High arch and instep: room over the instep, and lacing that leaves a window.',
		['deep-instep'],
		[],
	),
	rule(
		'skin-at-risk',
		['conditions'],
		(f) => f.ever('neuropathy', 'previous-foot-ulcer'),
		'Skin at risk: many low studs, none under a place of high pressure.',
		['many-studs', 'short-studs', 'stud-clear-of-first-joint'],
		['long-studs', 'bladed-studs'],
		{ source: 'NICE NG19 (high risk); studs common practice, no source', strength: 'practice' },
	),
	rule(
		'soft-ground',
		['play.surfaces'],
		(f) => on(f, 'natural-soft'),
		'Soft natural ground: a soft-ground sole with long studs; on hard or artificial ground the ' +
			'same sole presses and grips too much.',
		['soft-ground-sole', 'long-studs'],
		['turf-sole'],
	),
	rule(
		'firm-ground',
		['play.surfaces'],
		(f) => on(f, 'natural-firm', 'hybrid'),
		'Firm natural or hybrid ground: a firm-ground sole, or an artificial-ground one.',
		['firm-ground-sole'],
		[],
	),
	rule(
		'dry-hard-sole',
		['play.surfaces'],
		(f) => on(f, 'natural-hard'),
		'Hard natural ground: an artificial-ground or turf sole; never soft-ground studs.',
		['artificial-ground-sole'],
		['soft-ground-sole', 'long-studs'],
	),
	rule(
		'third-generation',
		['play.surfaces'],
		(f) => on(f, 'artificial-3g'),
		'Artificial turf (3G): an artificial-ground sole; soft-ground soles are unsuitable and ' +
			'firm-ground soles only partly suited.',
		['artificial-ground-sole'],
		['soft-ground-sole', 'long-studs'],
		{ source: 'Footwear Science traction project', strength: 'expert' },
	),
	rule(
		'sand-dressed',
		['play.surfaces'],
		(f) => on(f, 'artificial-sand'),
		'Sand-dressed artificial ground: a turf sole.',
		['turf-sole'],
		['soft-ground-sole', 'firm-ground-sole', 'long-studs'],
	),
	rule(
		'hall',
		['play.surfaces', 'play.code'],
		(f) => [
			...on(f, 'hall'),
			...(f.code === 'futsal' ? [{ measure: 'Code', value: 'futsal' }] : []),
		],
		'Hall floor: a flat indoor sole.',
		['indoor-sole'],
		[],
	),
	rule(
		'road',
		['play.surfaces'],
		(f) => on(f, 'road'),
		'Road and gym: running shoes, never studs.',
		['full-length-cushioning'],
		[],
	),
	rule(
		'scrum',
		['play.position', 'play.code'],
		(f) =>
			f.code.startsWith('rugby') && /prop|hooker|lock|second row|front row|scrum/.test(f.position)
				? [{ measure: 'Code and position', value: `${f.code}, ${f.position}` }]
				: [],
		'Scrum: more studs and a wide base to push from, within the stud limits of the code.',
		['many-studs', 'wide-base'],
		['low-mass'],
	),
	rule(
		'speed-position',
		['play.position'],
		(f) =>
			/wing|full-?back|striker|forward pocket|half-?back|fly-?half/.test(f.position)
				? [{ measure: 'Position', value: f.position }]
				: [],
		'Running positions often prefer a light boot: preference, not evidence.',
		['low-mass'],
		[],
		belief,
	),
	rule(
		'kicking-support',
		['play.position'],
		(f) =>
			/goal ?kicker|kicker|fly-?half/.test(f.position)
				? [{ measure: 'Position', value: f.position }]
				: [],
		'Kickers turn on the standing foot: a steady base and studs that let it turn.',
		['wide-base', 'low-rotational-grip'],
		[],
	),
	rule(
		'lighter-runner',
		['body.massKg'],
		(f) => f.lighter,
		'Lighter adult runners in harder shoes had more injuries in one trial of running shoes; ' +
			'heavier runners showed no clear effect. For road shoes only: no trial of boots was found.',
		['full-length-cushioning'],
		[],
		{
			source:
				'Malisoux 2020, Am J Sports Med 48:473 (n 848; hard shoe, lighter runners 1.80, heavier ' +
				'1.23 not significant)',
			strength: 'trial',
		},
	),
	rule(
		'between-sizes',
		['feet', 'conditions'],
		(f) =>
			f.narrow.length > 0 && f.now('subungual-haematoma').length > 0
				? [...f.narrow, ...f.now('subungual-haematoma')]
				: [],
		'Narrow foot with bruised nails: the foot slides forward. Hold the heel and the instep ' +
			'rather than take a shorter boot.',
		['firm-heel-counter'],
		['wide-fitting'],
	),
]
