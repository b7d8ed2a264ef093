/** The footwear rules: when, what it says, what to seek and avoid, and on what basis. One row a rule. */
import type { Because, Strength } from '../finding.ts'
import type { Feature } from '../visit/terms.ts'
import type { Facts } from './facts.ts'

export interface FootwearRule {
	id: string
	/** The reasons that make the rule apply; none: it does not. */
	when(facts: Facts): Because[]
	says: string
	seek: readonly Feature[]
	avoid: readonly Feature[]
	basis: { source: string; strength: Strength; threshold?: 'footwear.broadZ' | 'footwear.narrowZ' | 'footwear.heavyKg' }
}
const practice = { source: 'common practice, no source', strength: 'practice' } as const
const belief = { source: 'common practice, no source: belief, not trial evidence', strength: 'practice' } as const
const rule = (id: string, when: FootwearRule['when'], says: string, seek: readonly Feature[], avoid: readonly Feature[], basis: FootwearRule['basis'] = practice): FootwearRule => ({ id, when, says, seek, avoid, basis })

export const footwearRules: readonly FootwearRule[] = [
	rule('broad', (f) => f.broad, 'Broad foot for its length: a wide and deep forefoot in an upper that gives; lacing that skips the lowest rows adds room.', ['wide-fitting', 'deep-toe-box', 'soft-upper'], ['narrow-fitting'], { ...practice, threshold: 'footwear.broadZ' }),
	rule('narrow', (f) => f.narrow, 'Narrow foot: most boots are low in volume already. Try a thicker sock and lacing first, a narrow fitting last.', [], ['wide-fitting'], { ...practice, threshold: 'footwear.narrowZ' }),
	rule('first-ray', (f) => f.plantarflexedFirstRay, 'A plantarflexed first ray and a stud under the first joint concentrate pressure there: choose a sole without it, or have that stud lowered.', ['stud-clear-of-first-joint'], []),
	rule('restricted-ankle', (f) => f.restricted, 'Restricted ankle range: a raised heel eases the demand on the calf.', ['raised-heel'], ['low-heel']),
	rule('anterior-ankle', (f) => [...f.pinched, ...f.now('anterior-ankle-impingement')], 'A pinch at the front of the ankle is eased by a raised heel.', ['raised-heel'], ['low-heel']),
	rule('posterior-ankle', (f) => f.now('posterior-ankle-impingement'), 'Impingement at the back of the ankle: a high heel and a stiff high collar press there.', ['low-heel-collar'], ['raised-heel']),
	rule('growing-heel', (f) => f.now('calcaneal-apophysitis'), 'Growing heel: raise the heel in both shoes, soft counter, cushioned heel and many low studs; keep off hard ground in studs.', ['raised-heel', 'soft-heel-counter', 'full-length-cushioning', 'many-studs'], ['low-heel', 'firm-heel-counter'], { source: 'James et al., Br J Sports Med 2016;50:1268-1275 (heel raise better at 1 to 2 months, no difference later); Rodriguez-Sanz 2018', strength: 'trial' }),
	rule('achilles-insertional', (f) => f.now('achilles-insertional', 'haglund-deformity'), 'Back of the heel: a raised heel and a soft or low counter take pressure off the tendon.', ['raised-heel', 'soft-heel-counter', 'low-heel-collar'], ['firm-heel-counter', 'low-heel'], { source: 'NHS leaflet; heights common practice, no source', strength: 'practice' }),
	rule('achilles-midportion', (f) => f.now('achilles-midportion', 'calf-strain'), 'Achilles or calf: a raised heel lowers the demand.', ['raised-heel', 'soft-heel-counter'], ['low-heel'], { source: 'Rabusin 2021, Br J Sports Med 55:486 (12 mm lifts, daily shoes, not boots)', strength: 'trial' }),
	rule('plantar-heel', (f) => f.now('plantar-heel-pain'), 'Heel pain under the foot: firm heel cup, a midfoot that does not twist, some heel height.', ['firm-heel-counter', 'torsional-stiffness', 'raised-heel'], ['low-heel']),
	rule('sesamoid', (f) => f.now('sesamoid-pain'), 'Sesamoid pain: stiff forefoot, no stud under the first joint, some heel height but no steep one.', ['stiff-forefoot', 'stud-clear-of-first-joint'], ['flexible-forefoot'], { source: 'DeBiasio 2013, J Athl Train 48:601 (forefoot load); rest common practice, no source', strength: 'practice' }),
	rule('first-joint', (f) => [...f.stiffFirstJoint, ...f.now('first-mtp-osteoarthritis', 'hallux-limitus')], 'Stiff first joint: a stiff forefoot plate limits its bend; depth over the joint.', ['stiff-forefoot', 'deep-toe-box'], ['flexible-forefoot'], { source: 'Munteanu 2021 (adults, about 57 years: carried over to players)', strength: 'trial' }),
	rule('turf-toe', (f) => f.now('turf-toe'), 'Turf toe: a bendy forefoot with high grip goes with more bending back of the toe.', ['stiff-forefoot', 'low-rotational-grip'], ['flexible-forefoot'], { source: 'Rodeo 1990, Am J Sports Med 18:280', strength: 'cohort' }),
	rule('forefoot-pain', (f) => f.now('metatarsalgia', 'second-metatarsal-stress-fracture'), 'Forefoot pain: more contact points and a wider forefoot spread the load.', ['many-studs', 'wide-fitting', 'removable-liner'], ['bladed-studs']),
	rule('neuroma', (f) => f.now('interdigital-neuroma'), 'Neuroma: width and cushioning at the ball; a tight forefoot squeezes it.', ['wide-fitting', 'soft-upper', 'removable-liner'], ['narrow-fitting']),
	rule('bunion', (f) => f.now('hallux-valgus', 'bunionette'), 'Bunion: soft upper, no seam over the joint, a wide last.', ['soft-upper', 'smooth-forefoot-seams', 'wide-fitting'], ['narrow-fitting']),
	rule('fifth-metatarsal', (f) => f.ever('fifth-metatarsal-stress-fracture'), 'Fifth metatarsal stress fracture, now or before: round studs, none under the fifth metatarsal, a wide platform; keep the share of artificial turf below four fifths.', ['round-studs', 'stud-clear-of-fifth-metatarsal', 'wide-base'], ['bladed-studs', 'narrow-fitting'], { source: 'Bentley 2011, Foot Ankle Surg 17:140; Miyamori 2019, BMJ Open 9:e022864 (turf, odds ratio 3.44)', strength: 'cohort' }),
	rule('fifth-apophysis', (f) => f.now('fifth-metatarsal-apophysitis'), 'Growing base of the fifth metatarsal: width and softness at the outer border.', ['wide-fitting', 'stud-clear-of-fifth-metatarsal', 'soft-upper'], ['narrow-fitting']),
	rule('navicular', (f) => f.ever('navicular-stress-fracture'), 'Navicular stress fracture, now or before: a midfoot that does not twist and some cushioning.', ['torsional-stiffness', 'full-length-cushioning'], []),
	rule('cavus', (f) => [...f.supinated, ...f.now('cavus-foot-pain')], 'High arch: cushioning and a wide outer platform; bladed soles load the outer border.', ['full-length-cushioning', 'wide-base', 'round-studs'], ['bladed-studs'], { source: 'Bentley 2011, Foot Ankle Surg 17:140; rest common practice, no source', strength: 'practice' }),
	rule('pronated', (f) => [...f.pronated, ...f.now('flexible-flatfoot-pain')], 'Flat foot: a firm counter and a stiff midfoot hold an insert; the liner must come out.', ['firm-heel-counter', 'torsional-stiffness', 'removable-liner'], ['soft-heel-counter']),
	rule('ankle-instability', (f) => f.ever('lateral-ankle-instability'), 'Ankle that gives way, now or before: wide base, moderate studs, less grip in turning, room for a brace.', ['wide-base', 'short-studs', 'low-rotational-grip'], ['bladed-studs'], { source: 'Thomson 2015, Br J Sports Med 49:1245; rest common practice, no source', strength: 'cohort' }),
	rule('syndesmosis', (f) => f.now('syndesmosis-sprain'), 'High ankle sprain: less grip in turning.', ['low-rotational-grip', 'wide-base'], ['bladed-studs']),
	rule('acl', (f) => f.ever('acl-history'), 'ACL injury, now or before: round studs and less grip in turning. High grip has been associated with about twice the lower-limb injuries.', ['round-studs', 'low-rotational-grip'], ['bladed-studs'], { source: 'Thomson 2015, Br J Sports Med 49:1245 (4972 men)', strength: 'cohort' }),
	rule('toenails', (f) => f.now('ingrown-toenail', 'subungual-haematoma'), 'Toenails: depth and 8 to 12 mm before the toes while standing; never one size down.', ['deep-toe-box'], ['narrow-fitting']),
	rule('hammer-toe', (f) => f.now('hammer-toe', 'blister'), 'Rubbed toes: depth, soft upper, no seams over the forefoot.', ['deep-toe-box', 'soft-upper', 'smooth-forefoot-seams'], []),
	rule('sensation', (f) => f.ever('neuropathy', 'previous-foot-ulcer', 'diabetes'), 'Feet at risk: depth, soft upper without seams; no new boot without review.', ['deep-toe-box', 'soft-upper', 'smooth-forefoot-seams'], ['narrow-fitting'], { source: 'NICE NG19', strength: 'guideline' }),
	rule('shin-knee', (f) => f.now('shin-pain', 'patellofemoral-pain', 'patellar-tendinopathy', 'tibial-tubercle-apophysitis'), 'Shin or knee pain: cushioning for training, and studs that turn easily.', ['full-length-cushioning', 'low-rotational-grip'], []),
	rule('leg-length', (f) => f.now('leg-length-difference'), 'Leg-length difference: a liner that comes out leaves room for a raise.', ['removable-liner'], []),
	rule('hypermobile', (f) => f.now('hypermobility'), 'Very mobile joints: a steadier boot.', ['firm-heel-counter', 'torsional-stiffness', 'wide-base'], []),
	rule('heavy', (f) => (f.heavy && f.massKg !== undefined ? [{ measure: 'Body mass', value: f.massKg, unit: 'kg' }] : []), 'Heavy player: cushioning along the whole sole and a wide base. This is belief, not trial evidence.', ['full-length-cushioning', 'wide-base'], ['low-mass'], { ...belief, threshold: 'footwear.heavyKg' }),
	rule('contest', (f) => (/ruck|prop|lock|second row|front row|goalkeeper|centre half|key (forward|back)|number eight/.test(f.position) ? [{ measure: 'Position', value: f.position }] : []), 'Contest positions land and push often: cushioning along the whole sole and a wide base. This is belief, not trial evidence.', ['full-length-cushioning', 'wide-base'], [], belief),
	rule('artificial', (f) => (f.surfaces.includes('artificial-3g') || f.surfaces.includes('artificial-sand') ? [{ measure: 'Surface', value: 'artificial' }] : []), 'Artificial ground: many low, evenly spread studs; soft-ground soles are unsuitable there.', ['many-studs', 'short-studs'], ['bladed-studs'], { source: 'Footwear Science traction project', strength: 'expert' }),
	rule('hard-ground', (f) => (f.surfaces.includes('natural-hard') ? [{ measure: 'Surface', value: 'natural, hard' }] : []), 'Hard ground: more and shorter studs spread the pressure.', ['many-studs', 'short-studs'], []),
	rule('junior', (f) => (f.adult ? [] : [{ measure: 'Age', value: Math.floor(f.ageYears), unit: 'years' }]), 'Growing player: room for growth is measured, not guessed; many low studs and a soft upper.', ['many-studs', 'soft-upper'], ['bladed-studs']),
	rule('growth-spurt', (f) => f.growing.filter((one) => one.value === 'around' || one.value === 'uncertain'), 'Around the growth spurt: cushioned shoes for training, boots for matches, and measure the feet often.', ['full-length-cushioning'], []),
]
