/** Going to another page by its address, such as '/season/ID'. */
import { navigate } from 'wouter/use-hash-location'

/** The page that stands already is no further step on the way back. */
export const goTo = (address: string): void =>
	navigate(address, { replace: location.hash === `#${address}` })
