/** The forecasts held to account, in words. */
import type { Protocol } from '../../engine/protocol/protocol.ts'
import { number } from '../../engine/words/en/format.ts'
import type { Speak } from '../../engine/words/speak.ts'
import { errorKeys, type Held } from './account.ts'
import type { Audit } from './audit.ts'
import { cellWords, spreadWords, type TableInWords } from './in-words.ts'

const kindWords = (kind: Held['kind'], t: Speak): string => t(`audit.row.${kind}`)
/** Bands that were wrong too often, each in a sentence. */
export function wrongWords(
	{ account }: Pick<Audit, 'account'>,
	protocol: Protocol,
	t: Speak,
): string[] {
	const claimed = protocol.value('audit.bandPercent')
	const chance = number(100 / protocol.value('audit.chancePercent'), 0)
	return account.held
		.filter(({ isWrongTooOften }) => isWrongTooOften)
		.map(({ kind, came }) =>
			t('audit.wrong', { kind: kindWords(kind, t), came: cellWords(came, t), claimed, chance }),
		)
}
function shareWords({ kind, came, inside }: Held, claimed: number, t: Speak): string[] {
	if (!inside) return []
	const { percent, lowPercent: low, highPercent: high } = inside
	return [
		t('audit.share', {
			kind: kindWords(kind, t),
			came: cellWords(came, t),
			percent: number(percent),
			low: number(low),
			high: number(high),
			claimed,
		}),
	]
}
/** The band in force, and beside it what the clinic's own forecasts say. */
function errorWords(
	{ account: { own } }: Pick<Audit, 'account'>,
	protocol: Protocol,
	t: Speak,
): string[] {
	const [low, high] = errorKeys.map((key) => protocol.row(key))
	const claimed = protocol.value('audit.bandPercent')
	const standing = t('audit.standing', {
		low: number(low?.value ?? 0, 2),
		high: number(high?.value ?? 0, 2),
		source: high?.source ?? '',
	})
	const { forecasts, band, least, ratio } = own
	if (forecasts === undefined) return [standing, t('audit.tooFewHidden', { least })]
	const grew = ratio
		? [
				t('audit.ratio', {
					median: number(ratio.median, 2),
					low: number(ratio.low, 2),
					high: number(ratio.high, 2),
				}),
			]
		: []
	if (!band) return [standing, ...grew, t('audit.tooFew', { least, forecasts })]
	return [
		standing,
		...grew,
		t('audit.own', { low: number(band.low, 2), high: number(band.high, 2), claimed, forecasts }),
	]
}
/** What is missing, how many were inside, the band in force and the clinic's own. */
export function forecastWords(audit: Audit, protocol: Protocol, t: Speak): string[] {
	const claimed = protocol.value('audit.bandPercent')
	return [
		t('audit.missing.forecast', {
			days: protocol.value('growth.footIntervalMinDays'),
			check: protocol.value('footwear.lifeCheckHours'),
			replace: protocol.value('footwear.lifeReplaceHours'),
		}),
		...audit.account.held.flatMap((held) => shareWords(held, claimed, t)),
		...errorWords(audit, protocol, t),
	]
}
/** Growth forecast beside growth measured: how well the two go together. */
export function thirdsTable({ account: { thirds } }: Audit, t: Speak): TableInWords | undefined {
	if (thirds.length === 0) return undefined
	const names = ['audit.row.third.0', 'audit.row.third.1', 'audit.row.third.2'] as const
	return {
		caption: t('audit.caption.thirds'),
		head: [
			t('audit.col.row.thirds'),
			t('audit.col.players'),
			t('audit.col.expected'),
			t('audit.col.grown'),
		],
		rows: thirds.map(({ expected, grown }, at) => [
			t(names[at] ?? names[0]),
			cellWords(expected.n, t),
			spreadWords(expected, t),
			spreadWords(grown, t),
		]),
		says: [],
	}
}
