package thinclick.protocol.file;

import com.fasterxml.jackson.annotation.JsonInclude;
import org.jspecify.annotations.Nullable;

/**
 * The pitches that a rhythm carries; rhythm and pitch are separate layers.
 *
 * @param key concert key such as {@code "Eb"}, or null for C
 * @param scale the scale that is run through, or null where a progression is given
 * @param progression chords by bar such as {@code "Dm7 | G7 | Cmaj7 | % |"}, or null
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record Line(@Nullable String key, @Nullable String scale, @Nullable String progression) {}
