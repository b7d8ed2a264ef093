/** The sheet of a signed visit, as it was kept at signing; shown and printed. */
export function SignedSheet({ visitId }: { visitId: string }) {
	return <p>{visitId}</p>
}
