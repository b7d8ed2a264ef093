/**
 * Opens or closes the page beside Decide, which stands behind all decisions for the keys; opened,
 * it has the focus. @returns false where no preview stands
 */
export function togglePreview(): boolean {
	const preview = document.querySelector<HTMLDetailsElement>('details[data-preview]')
	if (!preview) return false
	preview.open = !preview.open
	if (preview.open) preview.querySelector('summary')?.focus()
	return true
}
