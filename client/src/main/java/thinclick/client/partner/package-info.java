/**
 * Hearing a far partner: which of the partner's notes sound when, and what hearing late does to the
 * tempo. Pure; called by the window.
 */
@NullMarked
package thinclick.client.partner;

import org.jspecify.annotations.NullMarked;
