/**
 * Preview, signature and the signed report: one at a time, each with its words while it runs and
 * its title where it fails.
 */
import { useEffect, useRef, useState } from 'react'
import type { OutputOf } from '../../../../shared/contract.ts'
import { call, HostRefusal } from '../../../host.ts'
import { useFileUrl } from '../../../parts/useFileUrl.ts'

type Pdf = OutputOf<'drafts.preview'>
type Clinician = OutputOf<'clinic.get'>['clinician']
/** A page to be shown. */
interface Page {
	base64: string
	fileName: string
	signed: boolean
}
/** The same with its address, once it has one. */
export interface ShownPage extends Page {
	url: string
}
export interface Trouble {
	title: string
	says: string
	problems: { path: string; message: string }[]
}
const troubleOf = (title: string, error: unknown): Trouble => ({
	title,
	says: error instanceof Error ? error.message : String(error),
	problems: error instanceof HostRefusal ? error.problems : [],
})

/** Whether the screen is still there when an answer comes. */
function useStillHere() {
	const here = useRef(true)
	useEffect(() => {
		here.current = true
		return () => {
			here.current = false
		}
	}, [])
	return here
}
interface Signing {
	draftId: string
	/** Saves what was typed last; it comes before every page and before the signature. */
	saveNow: () => Promise<void>
	saveToSign: () => Promise<string>
	/** Called once the record is frozen and the draft is gone. */
	onSigned: () => void
}
export function useSigning({ draftId, saveNow, saveToSign, onSigned }: Signing) {
	const here = useStillHere()
	const [clinician, setClinician] = useState<Clinician>()
	const [page, setPage] = useState<Page>()
	const [busy, setBusy] = useState('')
	const [trouble, setTrouble] = useState<Trouble>()
	const [visitId, setVisitId] = useState('')
	useEffect(() => {
		call('clinic.get', {}).then(
			(clinic) => here.current && setClinician(clinic.clinician),
			(error) => here.current && setTrouble(troubleOf('The clinic file did not open', error)),
		)
	}, [here])

	const run = async (words: string, title: string, work: () => Promise<void>) => {
		setTrouble(undefined)
		setBusy(words)
		try {
			await work()
		} catch (error) {
			if (here.current) setTrouble(troubleOf(title, error))
		} finally {
			if (here.current) setBusy('')
		}
	}
	const url = useFileUrl(page?.base64)
	const show = ({ base64, fileName }: Pdf, signed: boolean) => {
		if (here.current) setPage({ base64, fileName, signed })
	}
	const preview = () =>
		run('Preparing the page', 'The preview was not made', async () => {
			await saveNow()
			show(await call('drafts.preview', { draftId }), false)
		})
	const openReport = (id: string) =>
		run('Opening the report', 'The record is signed, but the report did not open', async () =>
			show(await call('reports.open', { visitId: id }), true),
		)
	const sign = async () => {
		let id = ''
		await run('Signing', 'Not signed', async () => {
			const revision = await saveToSign()
			id = (await call('visits.sign', { draftId, revision })).visitId
			onSigned()
			if (here.current) {
				setVisitId(id)
				setPage(undefined)
			}
		})
		if (id) await openReport(id)
	}
	const shown: ShownPage | undefined = page && url ? { ...page, url } : undefined
	return { clinician, page: shown, busy, trouble, visitId, preview, openReport, sign }
}
/** How far the signing is, and what can be done next. */
export type SigningState = ReturnType<typeof useSigning>
