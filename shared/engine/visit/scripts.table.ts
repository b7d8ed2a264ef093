/**
 * What the letters that the pages cannot print are called, the telling ones first: a Japanese name
 * is told by its kana, whatever else it holds. Unicode's own names of scripts (UAX 24).
 */
export const scriptNames: readonly (readonly [name: string, letters: RegExp])[] = [
	['Japanese', /[\p{Script=Hiragana}\p{Script=Katakana}]/u],
	['Korean', /\p{Script=Hangul}/u],
	['Chinese or Japanese', /\p{Script=Han}/u],
	['Arabic', /\p{Script=Arabic}/u],
	['Hebrew', /\p{Script=Hebrew}/u],
	['Armenian', /\p{Script=Armenian}/u],
	['Georgian', /\p{Script=Georgian}/u],
	['Bengali', /\p{Script=Bengali}/u],
	['Gurmukhi', /\p{Script=Gurmukhi}/u],
	['Gujarati', /\p{Script=Gujarati}/u],
	['Tamil', /\p{Script=Tamil}/u],
	['Telugu', /\p{Script=Telugu}/u],
	['Kannada', /\p{Script=Kannada}/u],
	['Malayalam', /\p{Script=Malayalam}/u],
	['Sinhala', /\p{Script=Sinhala}/u],
	['Thai', /\p{Script=Thai}/u],
	['Lao', /\p{Script=Lao}/u],
	['Khmer', /\p{Script=Khmer}/u],
	['Burmese', /\p{Script=Myanmar}/u],
	['Tibetan', /\p{Script=Tibetan}/u],
	['Ethiopic', /\p{Script=Ethiopic}/u],
]
