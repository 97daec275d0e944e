package thinclick.server.scoring;

import org.jspecify.annotations.Nullable;

/**
 * One answer against its call as the call was played: what the caller added or left out is asked
 * for, and how early or late it was is where the answer belongs.
 *
 * @param player who answered
 * @param of whose call it was
 * @param fromBar the answer's first bar, from 0
 * @param toBar the bar after its last
 * @param called attacks that the caller played
 * @param answered those of them that came back in order within the take's tolerance
 * @param extra attacks of the answer that the call did not have
 * @param laterMillis mean of answer minus call, each against the pulse where it stands, positive
 *     where the answer lies further back; null where none came back
 * @param spreadMillis standard deviation of the same; null under two
 */
public record Response(
    String player,
    String of,
    int fromBar,
    int toBar,
    int called,
    int answered,
    int extra,
    @Nullable Double laterMillis,
    @Nullable Double spreadMillis) {}
