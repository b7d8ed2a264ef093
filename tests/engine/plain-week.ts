/** The Monday of the week a date lies in, worked out anew and by nothing of the program. */
export function mondayOf(date: string): string {
	const day = new Date(`${date}T00:00:00Z`)
	day.setUTCDate(day.getUTCDate() - ((day.getUTCDay() + 6) % 7))
	return day.toISOString().slice(0, 10)
}
