/**
 * Where a bone stress injury is high risk (slow to heal, likely to break through). Source: Am Fam Physician 2003;67:85,
 * Ekstrand and van Dijk 2013; medial malleolus, talus, anterior tibia, base of the second metatarsal, femoral neck and patella from memory.
 * Not the list of the low-energy question: there hip neck, sacrum and pelvis count as high risk and foot bones as low (IOC REDs CAT2 2023).
 */
import type { BoneSite } from '../visit/terms.ts'

export interface BoneSiteRow {
	site: BoneSite
	risk: 'high' | 'low'
	deep?: true
	/** How it is examined, for the clinician. */
	screen: string
	source: string
}
const memory = 'common practice (from memory)'
export const boneSiteRows: readonly BoneSiteRow[] = [
	{ site: 'navicular', risk: 'high', screen: 'Press the top of the navicular. A plain film shows about one in three; MRI nearly all.', source: 'Am Fam Physician 2003;67:85' },
	{ site: 'fifth-metatarsal-proximal', risk: 'high', screen: 'Outer foot ache, worse with kicking and cutting; nearly half had pain before the break.', source: 'Ekstrand and van Dijk 2013, Br J Sports Med 47:754' },
	{ site: 'hallux-sesamoid', risk: 'high', screen: 'Point pain under the first joint, worse when the big toe is bent up.', source: 'published site lists; examination from memory' },
	{ site: 'medial-malleolus', risk: 'high', screen: 'Point pain on the inner ankle bone.', source: memory },
	{ site: 'talus', risk: 'high', screen: 'Deep ankle pain with load.', source: memory },
	{ site: 'anterior-tibia', risk: 'high', screen: 'Point pain on the front edge of the shin.', source: memory },
	{ site: 'second-metatarsal-base', risk: 'high', screen: 'Point pain at the base of the second metatarsal.', source: memory },
	{ site: 'femoral-neck', risk: 'high', deep: true, screen: 'Groin or hip pain with load; it cannot be felt with the finger, and hopping is not tested.', source: memory },
	{ site: 'patella', risk: 'high', screen: 'Point pain on the kneecap.', source: memory },
	{ site: 'metatarsal-shaft', risk: 'low', screen: 'Point pain on the second, third or fourth shaft.', source: memory },
	{ site: 'calcaneus', risk: 'low', screen: 'Pain when the heel bone is squeezed from both sides.', source: memory },
	{ site: 'posteromedial-tibia', risk: 'low', screen: 'Point pain on the inner back edge of the shin.', source: memory },
	{ site: 'fibula', risk: 'low', screen: 'Point pain on the fibula.', source: memory },
	{ site: 'cuboid', risk: 'low', screen: 'Point pain on the outer midfoot.', source: memory },
]
