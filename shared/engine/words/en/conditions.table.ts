/**
 * What every condition is called, by reader, with the other names that people type for it. `shoe`
 * and `caution` are the sentences of what its row asks; the types ask for them where a row has one.
 */
import type { Condition, ConditionTable, Exercise } from '../../visit/terms.ts'

/** Each reader that must have words of its own, else it would read none. */
type Says<Reader extends string> = Readonly<Record<Reader, string>>
interface Names {
	/** As clinicians call it. */
	name: string
	/** As a player of 13 reads it, the trade's name beside it where it helps. */
	player: string
	/** In a letter, where it differs from `name`. */
	doctor?: string
	/** Other names, none of them the same as another condition's own name. */
	synonyms: readonly string[]
}
type Shoe<Row> = Row extends { shoe: unknown } ? { shoe: Says<'clinician' | 'player'> } : { shoe?: never }
type Caution<Row> = Row extends { caution: unknown } ? { caution: Says<'clinician' | 'player' | 'doctor'> } : { caution?: never }

export const conditionWords: { readonly [Name in Condition]: Names & Shoe<ConditionTable[Name]> & Caution<ConditionTable[Name]> } = {
	// heel and Achilles
	'achilles-insertional': { name: 'insertional Achilles tendinopathy', player: 'sore tendon where it meets the heel (insertional Achilles tendinopathy)', synonyms: ['insertional Achilles tendinitis', 'Achilles enthesopathy', 'Achilles pain at the heel bone', 'retrocalcaneal bursitis'] },
	'achilles-midportion': { name: 'mid-portion Achilles tendinopathy', player: 'sore tendon above the heel (mid-portion Achilles tendinopathy)', synonyms: ['Achilles tendinitis', 'Achilles tendonitis', 'Achilles tendinosis', 'heel cord pain'] },
	'haglund-deformity': { name: 'Haglund deformity', player: 'bump behind the heel (Haglund)', synonyms: ['Haglund', "Haglund's heel", 'pump bump', 'retrocalcaneal exostosis'] },
	'calcaneal-apophysitis': { name: 'calcaneal apophysitis (growing heel)', player: 'growing heel pain (calcaneal apophysitis)', doctor: 'calcaneal apophysitis (Sever disease)', synonyms: ['Sever', 'Sever disease', "Sever's disease", "Sever's", 'growing heel pain', 'heel growth plate pain'] },
	'plantar-heel-pain': { name: 'plantar heel pain', player: 'pain under the heel', synonyms: ['plantar fasciitis', 'plantar fasciopathy', 'plantar fasciosis', 'heel spur', 'heel spur syndrome'] },
	'heel-fat-pad-pain': { name: 'heel fat pad pain', player: 'sore heel pad', synonyms: ['fat pad syndrome', 'fat pad atrophy', 'bruised heel', 'heel contusion'] },
	// forefoot
	'sesamoid-pain': { name: 'sesamoid pain', player: 'pain under the big-toe joint (sesamoid)', synonyms: ['sesamoiditis', 'bipartite sesamoid'] },
	'first-mtp-osteoarthritis': { name: 'first MTP osteoarthritis', player: 'worn big-toe joint (osteoarthritis)', doctor: 'osteoarthritis of the first metatarsophalangeal joint', synonyms: ['hallux rigidus', 'big toe arthritis', 'first MTPJ osteoarthritis', 'first metatarsophalangeal arthritis'] },
	'hallux-limitus': { name: 'hallux limitus', player: 'stiff big toe (hallux limitus)', synonyms: ['stiff big toe', 'functional hallux limitus'] },
	'turf-toe': { name: 'turf toe', player: 'sprained big toe (turf toe)', doctor: 'turf toe (sprain of the plantar first metatarsophalangeal joint)', synonyms: ['sprained big toe', 'first MTP sprain', 'hyperextended big toe'] },
	'hallux-valgus': { name: 'hallux valgus', player: 'bunion (hallux valgus)', synonyms: ['bunion', 'hallux abducto valgus'] },
	bunionette: { name: 'bunionette', player: 'small-toe bunion', doctor: "bunionette (tailor's bunion)", synonyms: ["tailor's bunion", 'small-toe bunion', 'fifth toe bunion'] },
	'hammer-toe': { name: 'hammer toe', player: 'bent toe that rubs (hammer toe)', synonyms: ['claw toe', 'mallet toe', 'curly toe'] },
	'interdigital-neuroma': { name: 'interdigital neuroma', player: 'sore nerve between the toes (neuroma)', doctor: 'interdigital (Morton) neuroma', synonyms: ['Morton', "Morton's neuroma", 'Morton neuroma', 'trapped toe nerve'] },
	metatarsalgia: { name: 'metatarsalgia', player: 'pain under the ball of the foot', synonyms: ['ball of foot pain', 'forefoot pain'] },
	'plantar-plate-injury': {
		name: 'plantar plate injury',
		player: 'sprain under a small-toe joint (plantar plate)',
		doctor: 'injury of a lesser plantar plate',
		synonyms: ['plantar plate tear', 'plantar plate sprain', 'predislocation syndrome', 'second toe instability', 'floating toe'],
		shoe: {
			clinician: 'Plantar plate injury: a stiff forefoot limits the bend of the joint. Many low studs, none under the sore head, most often the second.',
			player: 'Your sore toe joint likes a front that bends little. No stud should sit under it.',
		},
		caution: {
			clinician: 'Plantar plate injury: keep the toe from bending back; taping it down may be tried. A toe that drifts or crosses over: refer.',
			player: 'Do not bend your sore toe back. If it starts to cross another toe, tell us.',
			doctor: 'Plantar plate injury suspected or known; the toe is watched for drift.',
		},
	},
	'second-metatarsal-stress-fracture': { name: 'second metatarsal stress fracture', player: 'stress fracture in the middle of the forefoot (second metatarsal)', synonyms: ['march fracture', 'second metatarsal stress reaction'] },
	'fifth-metatarsal-stress-fracture': { name: 'fifth metatarsal stress fracture', player: 'stress fracture at the outer edge of the foot', synonyms: ['Jones fracture', 'fifth metatarsal stress reaction'] },
	'fifth-metatarsal-apophysitis': {
		name: 'fifth metatarsal apophysitis',
		player: 'growing pain at the outer edge of the foot (fifth metatarsal apophysitis)',
		doctor: 'apophysitis of the base of the fifth metatarsal (Iselin disease)',
		synonyms: ['Iselin', 'Iselin disease', "Iselin's disease", 'traction apophysitis of the fifth metatarsal'],
	},
	// midfoot and arch
	'navicular-stress-fracture': { name: 'navicular stress fracture', player: 'stress fracture in the midfoot (navicular)', synonyms: ['navicular stress reaction', 'N spot pain'] },
	'midfoot-sprain': {
		name: 'midfoot sprain',
		player: 'sprain in the middle of the foot',
		doctor: 'sprain of the tarsometatarsal (Lisfranc) joints',
		synonyms: ['Lisfranc injury', 'Lisfranc sprain', 'tarsometatarsal sprain'],
		shoe: {
			clinician: 'Midfoot sprain: a midfoot that does not twist and a stiff forefoot spare the joints.',
			player: 'Your foot likes a sole that does not twist or bend much.',
		},
		caution: {
			clinician: 'Midfoot sprain: often missed at first. A bruise under the foot, or no single heel rise, asks for films taken with weight on both feet before any load.',
			player: 'Is there a bruise under your foot? Can you not stand on your toes? Then tell us before you run.',
			doctor: 'Midfoot sprain: films with weight on both feet are asked for where a plantar bruise or a failed heel rise is found.',
		},
	},
	'flexible-flatfoot-pain': { name: 'flexible flatfoot pain', player: 'painful flat foot', doctor: 'painful flexible flat foot', synonyms: ['flat feet', 'pes planus', 'fallen arches', 'overpronation pain'] },
	'cavus-foot-pain': { name: 'cavus foot pain', player: 'painful high arch', doctor: 'painful cavus foot', synonyms: ['pes cavus', 'high arch', 'supinated foot pain'] },
	'tarsal-coalition': {
		name: 'tarsal coalition',
		player: 'two bones of the foot joined together (tarsal coalition)',
		synonyms: ['calcaneonavicular coalition', 'talocalcaneal coalition', 'peroneal spastic flat foot', 'subtalar coalition', 'tarsal bar'],
		shoe: {
			clinician: 'Tarsal coalition: the hindfoot cannot follow the ground. A firm counter, a midfoot that does not twist, cushioning, and room for an insert that does not correct.',
			player: 'Your foot is stiff. It likes a firm heel, a middle that does not twist, and cushioning.',
		},
		caution: {
			clinician: 'Tarsal coalition: do not post a rigid foot medially, and do not force its motion; accommodate it. Pain that stays, or repeated sprains: refer for imaging and a surgical opinion.',
			player: 'Do not force your stiff foot to move. If it keeps hurting, tell us.',
			doctor: 'Tarsal coalition: a rigid foot is accommodated, not corrected. Your view on imaging and a surgical opinion is asked where pain stays.',
		},
	},
	'posterior-tibial-tendinopathy': { name: 'posterior tibial tendinopathy', player: 'sore tendon at the inner ankle', synonyms: ['tib post tendinopathy', 'posterior tibial tendon dysfunction', 'PTTD', 'tibialis posterior tendinitis'] },
	// ankle
	'lateral-ankle-instability': { name: 'lateral ankle instability', player: 'ankle that gives way (lateral instability)', synonyms: ['weak ankle', 'ankle that gives way', 'chronic ankle instability', 'recurrent ankle sprain', 'rolled ankle'] },
	'syndesmosis-sprain': { name: 'syndesmosis sprain', player: 'high ankle sprain', synonyms: ['high ankle sprain', 'syndesmotic injury'] },
	'anterior-ankle-impingement': { name: 'anterior ankle impingement', player: 'pinch at the front of the ankle', synonyms: ["footballer's ankle", 'front ankle pinch'] },
	'posterior-ankle-impingement': { name: 'posterior ankle impingement', player: 'pinch at the back of the ankle', synonyms: ['os trigonum', "dancer's heel", 'back ankle pinch'] },
	'peroneal-tendinopathy': { name: 'peroneal tendinopathy', player: 'sore tendon at the outer ankle', synonyms: ['fibularis tendinopathy', 'peroneal tendinitis'] },
	'sinus-tarsi-pain': { name: 'sinus tarsi pain', player: 'pain at the front of the outer ankle', synonyms: ['sinus tarsi syndrome'] },
	'ankle-osteoarthritis': {
		name: 'ankle osteoarthritis',
		player: 'worn ankle joint (osteoarthritis)',
		synonyms: ['ankle arthritis', 'post-traumatic ankle arthritis', 'worn ankle'],
		shoe: {
			clinician: 'Ankle osteoarthritis: a stiff sole, rocked where it can be had, asks less motion of the joint; cushioning, a wide base, and studs that let the foot turn.',
			player: 'Your worn ankle likes a stiff sole, cushioning, and a wide base.',
		},
		caution: {
			clinician: 'Ankle osteoarthritis: no forced stretch into the end of range. A locked, hot or swollen joint: refer.',
			player: 'Do not push your ankle into its end range. If it locks or swells, tell us.',
			doctor: 'Ankle osteoarthritis: motion is not forced; locking or swelling is referred back to you.',
		},
	},
	'foot-or-ankle-surgery': { name: 'foot or ankle surgery', player: 'an operation on the foot or ankle', synonyms: ['after surgery', 'operation', 'post-operative foot', 'ankle reconstruction', 'screw fixation'] },
	// leg and knee
	'calf-strain': { name: 'calf strain', player: 'strained calf', synonyms: ['tennis leg', 'pulled calf', 'gastrocnemius tear', 'soleus strain'] },
	'shin-pain': { name: 'shin pain', player: 'sore shin', synonyms: ['shin splints', 'medial tibial stress syndrome', 'MTSS'] },
	'tibial-tubercle-apophysitis': { name: 'tibial tubercle apophysitis', player: 'growing pain below the knee (tibial tubercle apophysitis)', doctor: 'apophysitis of the tibial tubercle (Osgood-Schlatter disease)', synonyms: ['Osgood', 'Osgood-Schlatter', 'Osgood Schlatter disease'] },
	'patellofemoral-pain': { name: 'patellofemoral pain', player: 'pain at the front of the knee', synonyms: ["runner's knee", 'anterior knee pain', 'PFPS'] },
	'patellar-tendinopathy': { name: 'patellar tendinopathy', player: 'sore tendon below the kneecap', synonyms: ["jumper's knee", 'patellar tendinitis'] },
	'acl-history': { name: 'ACL injury history', player: 'knee injury of the past (ACL)', doctor: 'history of anterior cruciate ligament injury', synonyms: ['cruciate ligament tear', 'ACL reconstruction', 'ACL tear'] },
	'knee-osteoarthritis': { name: 'knee osteoarthritis', player: 'worn knee joint (osteoarthritis)', synonyms: ['knee arthritis', 'worn knee'] },
	// skin and nails
	'ingrown-toenail': { name: 'ingrown toenail', player: 'ingrown toenail', doctor: 'ingrowing toenail', synonyms: ['ingrowing toenail', 'onychocryptosis'] },
	'subungual-haematoma': { name: 'subungual haematoma', player: 'bruise under the nail', synonyms: ["runner's toe", 'black toenail', 'bruised toenail', 'subungual hematoma'] },
	blister: { name: 'blister', player: 'blister', synonyms: ['friction blister', 'skin rub'] },
	'previous-foot-ulcer': { name: 'previous foot ulcer', player: 'earlier wound on the foot that was slow to heal', synonyms: ['foot ulcer history', 'healed foot ulcer', 'earlier foot wound'] },
	// the whole player
	diabetes: { name: 'diabetes', player: 'diabetes', synonyms: ['diabetes mellitus', 'type 1 diabetes', 'type 2 diabetes'] },
	neuropathy: { name: 'neuropathy', player: 'reduced feeling in the feet', doctor: 'peripheral neuropathy', synonyms: ['peripheral neuropathy', 'loss of protective sensation', 'numb feet'] },
	hypermobility: { name: 'hypermobility', player: 'very bendy joints', doctor: 'joint hypermobility', synonyms: ['joint hypermobility', 'loose joints', 'double jointed'] },
	'leg-length-difference': { name: 'leg-length difference', player: 'one leg longer than the other', synonyms: ['leg length discrepancy', 'short leg', 'unequal legs'] },
	'other-condition': { name: 'another condition', player: 'something else we noted', synonyms: ['other', 'something else', 'not in the list'] },
}
/** Exercises as clinicians call them. */
export const exerciseWords: { readonly [Name in Exercise]: string } = {
	'calf-loading': 'slow, heavy calf loading',
	'calf-loading-from-floor': 'slow calf loading from the floor, no drop below it',
	'calf-and-peroneal-stretch': 'stretching of the calf and the peroneal muscles',
	'heel-rise-strength': 'heel rises',
	balance: 'balance on one leg',
	'foot-muscles': 'strength of the small foot muscles',
	'knee-loading': 'slow knee loading',
	'hip-and-knee-strength': 'hip and knee strength',
	'load-ladder': 'a ladder of load, step by step',
	'toe-taping': 'taping the toe down',
	'within-comfort': 'movement within comfort, never forced',
}
