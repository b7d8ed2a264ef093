/** Who is meant by whom: a guardian reads of the player by name, a child of its guardian. */
import { isMinor } from '../../facts/age.ts'
import { openProtocol } from '../../protocol/protocol.ts'
import { guardianPaperName, paperName } from '../../words/names.ts'
import type { Speak } from '../../words/speak.ts'
import type { ReportInput } from '../inputs.ts'
import type { Reader } from '../reader.ts'
import type { Danger } from '../waits.ts'

export interface Who {
	stop: Readonly<Record<Danger['stops'][number], string>>
	noWeight: (side: string) => string
	noWeightBoth: string
	/** Whoever does a priority; undefined for one that this version does not know. */
	does: Readonly<Partial<Record<string, string>>>
}
const ofGuardian = (name: string, t: Speak): Who => ({
	stop: {
		sport: t('guardian.stopSport', { name }),
		match: t('guardian.stopMatch', { name }),
		impact: t('guardian.stopImpact', { name }),
	},
	noWeight: (side) => t('guardian.noWeight', { name, side }),
	noWeightBoth: t('guardian.noWeightBoth', { name }),
	does: {
		clinician: t('guardian.whoClinician'),
		player: t('guardian.whoGuardian', { name }),
		guardian: t('guardian.whoYou'),
		doctor: t('player.whoDoctor'),
	},
})
const ofPlayer = (guardian: string | undefined, t: Speak): Who => ({
	stop: {
		sport: t('player.stopSport'),
		match: t('player.stopMatch'),
		impact: t('player.stopImpact'),
	},
	noWeight: (side) => t('player.noWeight', { side }),
	noWeightBoth: t('player.noWeightBoth'),
	does: {
		clinician: t('player.whoClinician'),
		player: t('player.whoYou'),
		guardian: guardian ? t('pageOne.youAnd', { name: guardian }) : t('player.whoGuardian'),
		doctor: t('player.whoDoctor'),
	},
})
export const whoFor = ({ audience }: Reader, { visit: { player } }: ReportInput, t: Speak): Who =>
	audience === 'guardian'
		? ofGuardian(paperName(player).givenName, t)
		: ofPlayer(player.guardian && guardianPaperName(player.guardian), t)
/** Who goes along; undefined for a player of age, who goes alone. */
export function companionOf(
	{ audience }: Reader,
	{ visit, protocol = openProtocol() }: ReportInput,
	t: Speak,
): string | undefined {
	const { guardian } = visit.player
	if (audience === 'guardian')
		return t('pageOne.youGoWith', { name: paperName(visit.player).givenName })
	if (!isMinor(visit, protocol)) return undefined
	return guardian
		? t('pageOne.goesWith', { name: guardianPaperName(guardian) })
		: t('pageOne.carerGoes')
}
