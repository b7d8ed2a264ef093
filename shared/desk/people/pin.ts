/** PINs that are guessed first. */
import { commonPins } from './pins.table.ts'

interface Easy {
	why: string
	is: (pin: string) => boolean
}
const steps = (pin: string): number[] =>
	[...pin].slice(1).map((digit, index) => (Number(digit) - Number(pin[index]) + 10) % 10)
const isRow = (step: number) => (pin: string) => steps(pin).every((other) => other === step)
const isRepeated = (pin: string): boolean => /^(\d{2,5})\1+$/.test(pin)
const isInPairs = (pin: string): boolean => /^(?:(\d)\1)+$/.test(pin)

const easy: readonly Easy[] = [
	{ why: 'it repeats one digit', is: isRow(0) },
	{ why: 'its digits count up', is: isRow(1) },
	{ why: 'its digits count down', is: isRow(9) },
	{ why: 'it repeats the same digits', is: isRepeated },
	{ why: 'it is made of pairs of one digit', is: isInPairs },
	{ why: 'it is a year', is: (pin) => /^(19|20)\d\d$/.test(pin) },
	{ why: 'it is one of the most used ones', is: (pin) => commonPins.has(pin) },
]
/**
 * @param pin digits only
 * @returns why it may not be used, as part of a sentence; undefined where it may
 */
export const easyPin = (pin: string): string | undefined => easy.find(({ is }) => is(pin))?.why
