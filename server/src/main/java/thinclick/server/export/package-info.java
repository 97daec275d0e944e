/**
 * Pages and files for other programs: SVG, PDF, MusicXML, Standard MIDI Files. Called by the
 * commands and by rooms that hand out parts; the values come from material and engraving.
 */
@NullMarked
package thinclick.server.export;

import org.jspecify.annotations.NullMarked;
