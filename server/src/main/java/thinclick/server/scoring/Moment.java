package thinclick.server.scoring;

import org.jspecify.annotations.Nullable;

/** The forward pass at one written attack: weights by followed shift, and how it was come by. */
final class Moment {
  final int[] active;
  final double[][] weight;

  /** Likelihood of what was played, by followed shift; null where nothing lies in reach. */
  final double @Nullable [][] likely;

  final double jump;
  final PhaseCourses.@Nullable Course course;
  final int followed;

  Moment(
      int[] active,
      double[][] weight,
      double @Nullable [][] likely,
      double jump,
      PhaseCourses.@Nullable Course course,
      int followed) {
    this.active = active;
    this.weight = weight;
    this.likely = likely;
    this.jump = jump;
    this.course = course;
    this.followed = followed;
  }
}
