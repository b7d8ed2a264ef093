/** Set-ups and upgrades that are killed, counted. */
import { chance } from './chance.ts'
import { setUpUntilKilled } from './killed-set-up.ts'
import { upgradeUntilKilled } from './killed-upgrade.ts'

const longestUpgradeMs = 40
export interface KilledStarts {
	kills: number
	/** how many had happened before the kill, where that can be told */
	stood: number
	faults: string[]
}
type Tell = (text: string) => void

export async function killedSetUps(
	rounds: number,
	seed: number,
	tell: Tell = () => {},
): Promise<KilledStarts> {
	const result: KilledStarts = { kills: 0, stood: 0, faults: [] }
	for (let round = 1; round <= rounds; round++) {
		const { stood, faults } = await setUpUntilKilled(chance(seed, round, 3))
		result.kills++
		if (stood) result.stood++
		result.faults.push(...faults.map((fault) => `set-up ${round}: ${fault}`))
		tell(`set-up ${round}: ${stood ? 'it stood' : 'set up anew'}; ${result.faults.length} faults`)
	}
	return result
}
export async function killedUpgrades(
	rounds: number,
	seed: number,
	tell: Tell = () => {},
): Promise<KilledStarts> {
	const result: KilledStarts = { kills: 0, stood: 0, faults: [] }
	for (let round = 1; round <= rounds; round++) {
		const faults = await upgradeUntilKilled(chance(seed, round, 5).below(longestUpgradeMs))
		result.kills++
		result.faults.push(...faults.map((fault) => `upgrade ${round}: ${fault}`))
		tell(`upgrade ${round}; ${result.faults.length} faults`)
	}
	return result
}
