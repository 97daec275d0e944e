/**
 * From a written part to marks on paper, measured in staff spaces: spelling, spacing, beams, ties,
 * bearings, pages. Pure; called by the exports and by the client's window.
 */
@NullMarked
package thinclick.server.engraving;

import org.jspecify.annotations.NullMarked;
