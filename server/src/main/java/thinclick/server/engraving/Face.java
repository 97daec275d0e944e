package thinclick.server.engraving;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The faces that pages are set in, Source Serif 4, with their advance widths, so that a line of
 * text can be placed without opening a font. A test compares the widths with the fonts that are
 * shipped.
 *
 * <p>Widths are thousandths of the size for U+0020 to U+007E, U+00A0 to U+017F and the dashes,
 * quotation marks, dots and minus of printed text; all other characters count as {@value #OTHER}.
 * Kerning is not used.
 */
public enum Face {
  /** The text of pages. */
  REGULAR(
      "SourceSerif4-Regular.ttf",
      """
      233 289 356 526 500 880 720 183 339 339 439 530 300 312 300 330 500 500 500 500 500 500
      500 500 500 500 300 300 530 530 530 416 835 664 629 631 710 603 579 682 788 371 374 667
      596 902 735 707 589 707 651 512 604 727 674 962 648 633 551 320 330 320 531 512 400 509
      577 488 567 510 354 518 601 298 277 547 298 901 606 549 583 557 423 434 325 583 505 764
      526 512 456 344 291 344 530 233 289 500 500 502 500 291 491 400 755 351 487 530 312 459
      400 328 530 370 370 400 569 598 300 400 370 377 487 850 880 850 416 664 664 664 664 664
      664 920 631 603 603 603 603 371 371 371 371 710 735 707 707 707 707 707 530 707 727 727
      727 727 633 611 592 509 509 509 509 509 509 786 488 510 510 510 510 298 298 298 298 546
      606 549 549 549 549 549 530 549 583 583 583 583 512 554 512 664 509 664 509 664 509 631
      488 631 488 631 488 631 488 710 579 710 567 603 510 603 510 603 510 603 510 603 510 682
      518 682 518 682 518 682 518 788 601 789 601 371 298 371 298 640 640 371 298 371 298 640
      640 374 277 667 547 547 596 298 596 298 596 300 596 298 596 298 735 606 735 606 735 606
      778 735 606 707 549 707 549 707 549 938 872 651 423 651 423 651 423 512 434 512 434 512
      434 512 434 604 325 604 325 640 640 727 583 727 583 727 583 727 583 727 583 727 583 962
      764 633 512 633 551 456 551 456 551 456 344
      512 812 212 212 212 415 415 415 820 530
      """),
  /** Directions and remarks. */
  ITALIC(
      "SourceSerif4-It.ttf",
      """
      234 290 423 555 511 854 694 258 375 375 480 530 300 311 300 329 511 511 511 511 511 511
      511 511 511 511 300 300 530 530 530 444 872 676 624 593 701 587 550 655 764 358 350 663
      568 927 727 660 563 660 646 494 569 712 605 872 661 554 537 325 313 325 530 511 400 522
      494 407 524 407 294 486 544 305 250 472 279 818 563 488 512 488 400 360 329 572 478 729
      519 476 462 379 291 379 530 234 290 511 511 511 511 291 465 400 776 368 553 530 311 463
      400 328 530 347 347 400 529 597 300 400 347 345 553 829 854 829 444 676 676 676 676 676
      676 880 593 587 587 587 587 358 358 358 358 701 727 660 660 660 660 660 530 660 712 712
      712 712 554 562 505 522 522 522 522 522 522 668 407 407 407 407 407 305 305 305 305 488
      563 488 488 488 488 488 530 488 572 572 572 572 476 505 476 676 522 676 522 676 522 593
      407 593 407 593 407 593 407 701 538 701 524 587 407 587 407 587 407 587 407 587 407 655
      486 655 486 655 486 655 486 764 544 764 544 358 305 358 305 640 640 358 305 358 305 640
      640 350 250 663 472 492 568 279 568 279 568 295 568 275 568 279 727 563 727 563 727 563
      828 737 571 660 488 660 488 660 488 889 744 646 400 646 400 646 400 494 360 494 360 494
      360 494 360 569 329 569 329 640 640 712 572 712 572 712 572 712 572 712 572 712 572 872
      729 554 476 554 537 462 537 462 537 462 294
      511 811 275 275 275 475 475 475 820 530
      """),
  /** Titles and chord symbols. */
  SEMIBOLD(
      "SourceSerif4-Semibold.ttf",
      """
      224 316 398 545 520 883 720 207 357 357 435 537 300 325 300 356 520 520 520 520 520 520
      520 520 520 520 300 300 537 537 537 431 861 669 639 627 708 599 579 679 777 379 384 681
      589 899 732 705 600 705 666 526 618 729 668 971 651 629 557 333 356 333 537 525 400 519
      592 500 580 515 358 530 609 307 291 571 310 904 611 557 596 569 443 444 341 594 515 776
      538 522 460 341 301 341 537 224 316 520 520 521 520 301 510 400 750 353 517 537 325 464
      400 328 537 371 371 400 578 615 300 400 371 378 517 853 883 853 431 669 669 669 669 669
      669 907 627 599 599 599 599 379 379 379 379 708 732 705 705 705 705 705 537 705 729 729
      729 729 629 616 623 519 519 519 519 519 519 788 500 515 515 515 515 307 307 307 307 550
      611 557 557 557 557 557 537 557 594 594 594 594 522 577 522 669 519 669 519 669 519 627
      500 627 500 627 500 627 500 708 593 708 580 599 515 599 515 599 515 599 515 599 515 679
      530 679 530 679 530 679 530 777 609 778 609 379 307 379 307 640 640 379 307 379 307 640
      640 384 291 681 571 569 589 310 589 310 589 313 589 340 589 310 732 611 732 611 732 611
      781 732 611 705 557 705 557 705 557 934 866 666 443 666 443 666 443 526 444 526 444 526
      444 526 444 618 341 618 341 640 640 729 594 729 594 729 594 729 594 729 594 729 594 971
      776 629 522 629 557 460 557 460 557 460 351
      525 825 217 217 217 427 425 425 833 537
      """);

  /** What text is printed with beyond the letters: dashes, quotation marks, dots, minus. */
  private static final String PRINTED =
      "\u2013\u2014\u2018\u2019\u201a\u201c\u201d\u201e\u2026\u2212";

  private static final int OTHER = 560;
  private static final int SPACE = 0x20;
  private static final int TILDE = 0x7E;
  private static final int LATIN_1 = 0xA0;
  private static final int LATIN_END = 0x17F;

  private final String file;

  @SuppressWarnings("ImmutableEnumChecker") // filled once, never handed out
  private final int[] widths;

  Face(String file, String widths) {
    this.file = file;
    this.widths = Arrays.stream(widths.strip().split("\\s+")).mapToInt(Integer::parseInt).toArray();
  }

  /** The font file, a resource beside this class. */
  public String file() {
    return file;
  }

  /** The width of a text set at a size, in the unit of the size. */
  public double width(String text, double size) {
    long thousandths = text.codePoints().mapToLong(this::advance).sum();
    return thousandths * size / 1000;
  }

  /**
   * Words as lines that are no wider than that, as long as a word alone is not; none for no words.
   *
   * @param size of the words
   * @param width in the unit of the size
   */
  public List<String> lines(List<String> words, double size, double width) {
    List<String> lines = new ArrayList<>();
    String line = "";
    for (String word : words) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (!line.isEmpty() && width(longer, size) > width) {
        lines.add(line);
        line = word;
      } else {
        line = longer;
      }
    }
    if (!words.isEmpty()) {
      lines.add(line);
    }
    return lines;
  }

  private int advance(int codePoint) {
    if (codePoint >= SPACE && codePoint <= TILDE) {
      return widths[codePoint - SPACE];
    }
    if (codePoint >= LATIN_1 && codePoint <= LATIN_END) {
      return widths[TILDE - SPACE + 1 + codePoint - LATIN_1];
    }
    int printed = PRINTED.indexOf(codePoint);
    return printed < 0 ? OTHER : widths[widths.length - PRINTED.length() + printed];
  }
}
