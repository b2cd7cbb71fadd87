/** The policy that vouches for the address of the service worker, the one string a page's scripts hand to a browser to run. */
export const WORKER_POLICY = 'service-worker'

/** The policy that vouches for a preview's drawings. No published page allows it. */
export const PREVIEW_POLICY = 'preview-drawings'
