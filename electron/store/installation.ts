/** This installation as the author of what is written here: its name, its signature. */
import type { KeyObject } from 'node:crypto'
import { makeAuthor, signerOf } from './author.ts'
import type { Keyring } from './keyring.ts'
import type { Order } from './order.ts'

/** Under this name the private key lies sealed. */
const setting = 'author'

/** What a record of the kind 'installation' tells. */
export interface InstallationValue {
	origin: string
	/** Ed25519, base64 of the DER */
	publicKey: string
	since: string
	/** how it came to be */
	what: 'set-up' | 'upgrade' | 'restore' | 'copy'
}
export class Installation {
	readonly #keyring: Keyring
	readonly #order: Order
	#signer: KeyObject | undefined
	constructor(keyring: Keyring, order: Order) {
		this.#keyring = keyring
		this.#order = order
	}
	/** What signs for this installation. @throws Error while locked, or before it has a key */
	signer(): KeyObject {
		this.#keyring.opened()
		if (this.#signer) return this.#signer
		const der = this.#keyring.sealedSetting(setting)
		if (!der) throw new Error('This installation has no key of its own yet.')
		this.#signer = signerOf(der)
		return this.#signer
	}
	/** Whether it has a key of its own. @throws SealBroken where that is damaged */
	get isMade(): boolean {
		return this.#keyring.sealedSetting(setting) !== undefined
	}
	forget(): void {
		this.#signer = undefined
	}
	/** Makes a key of its own for the present origin. @returns the value that tells it to others */
	make(since: string, what: InstallationValue['what']): InstallationValue {
		const { publicKey, privateKey } = makeAuthor()
		this.#keyring.putSealedSetting(setting, privateKey)
		this.#signer = signerOf(privateKey)
		const { origin } = this.#order
		return { origin, publicKey: Buffer.from(publicKey).toString('base64'), since, what }
	}
}
