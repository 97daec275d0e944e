package thinclick.server.scoring;

/** The upper median of numbers, found by partition: linear where sorting is not. */
final class Median {
  private Median() {}

  /**
   * The value that would stand at {@code count / 2} if the first {@code count} were sorted; changes
   * their order.
   */
  static double of(double[] values, int count) {
    int wanted = count / 2;
    int low = 0;
    int high = count - 1;
    while (low < high) {
      double pivot = middle(values[low], values[(low + high) >>> 1], values[high]);
      int i = low;
      int j = high;
      while (i <= j) {
        while (values[i] < pivot) {
          i++;
        }
        while (values[j] > pivot) {
          j--;
        }
        if (i <= j) {
          double swapped = values[i];
          values[i++] = values[j];
          values[j--] = swapped;
        }
      }
      if (wanted <= j) {
        high = j;
      } else if (wanted >= i) {
        low = i;
      } else {
        break;
      }
    }
    return values[wanted];
  }

  private static double middle(double a, double b, double c) {
    return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
  }
}
