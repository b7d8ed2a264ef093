/** Logos are kept once, in the letterheads: a document names its own by digest. */
import type { Clinic } from '../../../shared/engine/report/clinic.ts'
import type { Logo } from '../../../shared/engine/report/kept/form.ts'
import { logoDigest } from '../../../shared/engine/report/kept/keep.ts'
import type { LogoOf } from '../../../shared/engine/report/kept/read.ts'
import type { Deps } from '../records/deps.ts'

const fits = (logo: Logo | undefined, sha256: string): logo is Logo =>
	logo !== undefined && logoDigest(logo) === sha256

/** Looks in the letterhead that was signed, then in every letterhead that the clinic ever had. */
export const logosOf =
	({ openAll }: Pick<Deps, 'openAll'>, signed?: Clinic): LogoOf =>
	(sha256) => {
		if (fits(signed?.logo, sha256)) return signed?.logo
		const logos = openAll('clinic').records.map(({ value }) => value.logo)
		return logos.find((logo) => fits(logo, sha256))
	}
