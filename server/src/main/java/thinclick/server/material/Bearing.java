package thinclick.server.material;

import org.jspecify.annotations.Nullable;

/**
 * Where one written attack stands, so that a player always knows where they are.
 *
 * @param step the attack's step from bar 1
 * @param bar its bar, from 0
 * @param beat its beat in the bar, from 1
 * @param place its place in the bar in words: {@code "and of 2"}, {@code "3"}
 * @param group the index of the group it stands in, or -1 where the material has no grouping
 * @param inGroup its place in the group in steps, from 1; 0 where there is no grouping
 * @param groupSteps the length of that group, steps; 0 where there is no grouping
 * @param placeInGroup the same in words: {@code "2 of 3"}, or null where there is no grouping
 */
public record Bearing(
    int step,
    int bar,
    int beat,
    String place,
    int group,
    int inGroup,
    int groupSteps,
    @Nullable String placeInGroup) {}
