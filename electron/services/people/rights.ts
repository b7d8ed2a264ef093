/** What each role sees and may do: the rights of the contract, in the words of the table. */
import { type CallName, contract, type OutputOf } from '../../../shared/contract.ts'
import { type StaffRole, staffRoles } from '../../../shared/desk/records/people.ts'
import { type Power, type PowerName, powerOf, powers } from './rights.table.ts'

const names = Object.keys(powers) as PowerName[]
const calls = Object.keys(powerOf) as CallName[]
/** The calls that a line of the table stands for. @internal */
export const callsOf = (power: PowerName): CallName[] =>
	calls.filter((name) => powerOf[name] === power)
const mayAll = (role: StaffRole, power: PowerName): boolean =>
	callsOf(power).every((name) => contract[name].who.includes(role))

export const listRights = (): OutputOf<'people.rights'> => ({
	rows: names.map((power) => {
		const { area, does, but = {} }: Power = powers[power]
		const who = staffRoles.filter((role) => mayAll(role, power))
		return {
			area,
			does,
			who,
			but: who.flatMap((role) => {
				const says = but[role]
				return says === undefined ? [] : [{ role, says }]
			}),
		}
	}),
})
