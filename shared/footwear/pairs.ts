import type { FootwearResult } from '../assessment.ts'
import type { Protocol } from '../protocol/protocol.ts'
import { rounded } from '../visit/sides.ts'
import type { Pair } from '../visit/visit.ts'

/** Trainers and boots are judged by bands of their own. */
const bands = {
	boot: { youth: 'footwear.youthReplaceMm', tight: 'footwear.adultTightMm', loose: 'footwear.adultLooseMm' },
	trainer: { youth: 'footwear.youthTrainerReplaceMm', tight: 'footwear.adultTrainerTightMm', loose: 'footwear.adultTrainerLooseMm' },
} as const

type Current = FootwearResult['current'][number]
/** The verdict on a pair in use: worn out first, then its toe room in mm (inside length - longer foot - sock). */
export function judgePair(pair: Pair, longerFootMm: number | undefined, sockMm: number, adult: boolean, protocol: Protocol): Current {
	const band = bands[pair.sole === 'road' || pair.sole === 'trail' ? 'trainer' : 'boot']
	const hours = pair.minutesWorn === undefined ? undefined : pair.minutesWorn / 60
	const life = pair.lifeMinutes === undefined ? protocol.value('footwear.lifeReplaceHours') : pair.lifeMinutes / 60
	const check = pair.lifeMinutes === undefined ? protocol.value('footwear.lifeCheckHours') : life
	const toeRoomMm = pair.insideLengthMm === undefined || longerFootMm === undefined ? undefined : pair.insideLengthMm - longerFootMm - sockMm
	const made = (verdict: Current['verdict'], says: string): Current => ({ id: pair.id, ...(toeRoomMm === undefined ? {} : { toeRoomMm }), verdict, says })
	if (hours !== undefined && hours >= life) return made('replace', `Worn ${rounded(hours, 0)} hours of an expected ${rounded(life, 0)}: replace.`)
	const wear = hours !== undefined && hours >= check ? ` Worn ${rounded(hours, 0)} hours: check studs, counter and sole.` : ''
	if (toeRoomMm === undefined) return made('unknown', `${pair.insideLengthMm === undefined ? 'Inside length not measured.' : 'Foot length not measured.'}${wear}`)
	const room = rounded(toeRoomMm, 1)
	if (!adult) return toeRoomMm < protocol.value(band.youth) ? made('replace', `Toe room ${room} mm is below ${protocol.value(band.youth)} mm: outgrown, replace.${wear}`) : made('keep', `Toe room ${room} mm.${wear}`)
	if (toeRoomMm < protocol.value(band.tight)) return made('change', `Toe room ${room} mm is tight.${wear}`)
	if (toeRoomMm > protocol.value(band.loose)) return made('change', `Toe room ${room} mm is loose.${wear}`)
	return made('keep', `Toe room ${room} mm.${wear}`)
}
