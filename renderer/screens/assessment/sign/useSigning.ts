/**
 * Preview, signature and the signed report: one at a time, each with its words while it runs and
 * its title where it fails.
 */
import { useEffect, useRef, useState } from 'react'
import type { OutputOf } from '../../../../shared/contract.ts'
import { call, HostRefusal } from '../../../host.ts'
import { urlOf } from '../../../parts/files.ts'

type Pdf = OutputOf<'drafts.preview'>
type Clinician = OutputOf<'clinic.get'>['clinician']
/** A page to be shown: its address is freed when another takes its place. */
export interface Page {
	url: string
	fileName: string
	signed: boolean
}
export interface Trouble {
	title: string
	says: string
	problems: { path: string; message: string }[]
}
const pageOf = (pdf: Pdf, signed: boolean): Page => ({
	url: urlOf(pdf.base64),
	fileName: pdf.fileName,
	signed,
})
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
/** The page on screen; the address of the one before is freed. */
function usePage() {
	const [page, setPage] = useState<Page>()
	useEffect(
		() => () => {
			if (page) URL.revokeObjectURL(page.url)
		},
		[page],
	)
	return [page, setPage] as const
}

interface Signing {
	draftId: string
	/** Saves what was typed last; it comes before every page and before the signature. */
	saveNow: () => Promise<void>
	/** Called once the record is frozen and the draft is gone. */
	onSigned: () => void
}
export function useSigning({ draftId, saveNow, onSigned }: Signing) {
	const here = useStillHere()
	const [clinician, setClinician] = useState<Clinician>()
	const [page, setPage] = usePage()
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
	const show = (pdf: Pdf, signed: boolean) => {
		if (here.current) setPage(pageOf(pdf, signed))
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
			await saveNow()
			id = (await call('visits.sign', { draftId })).visitId
			onSigned()
			if (here.current) {
				setVisitId(id)
				setPage(undefined)
			}
		})
		if (id) await openReport(id)
	}
	return { clinician, page, busy, trouble, visitId, preview, openReport, sign }
}
/** How far the signing is, and what can be done next. */
export type SigningState = ReturnType<typeof useSigning>
