package thinclick.server.words;

import java.util.List;
import java.util.function.Function;

/**
 * One thing that is looked for in a take.
 *
 * @param name its name, which its findings carry
 * @param find from what is known to what there is to say; nothing where it does not apply
 */
record Rule(String name, Function<Evidence, List<Finding>> find) {}
