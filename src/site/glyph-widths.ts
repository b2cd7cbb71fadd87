/**
 * The width of a line of text as the widest common system font would set it, in ems.
 *
 * Units   ems out: multiply by the font size.
 * Assumes regular weight; a bold line may be an eighth wider.
 */
export function textWidth(text: string): number {
  return [...text].reduce((sum, character) => sum + glyphWidth(character), 0) / 1000
}

/** An accented letter outside the table is as wide as the letter without its accents. */
function glyphWidth(character: string): number {
  if (WITHOUT_WIDTH.test(character)) return 0
  return WIDTHS.get(character) ?? WIDTHS.get([...character.normalize('NFD')][0] ?? '') ?? DEFAULT_WIDTH
}

/** For what the table does not know: one em, the width of a Chinese or Japanese character. */
const DEFAULT_WIDTH = 1000

/** Accents that are written after their letter, and marks that only steer the text, take no room. */
const WITHOUT_WIDTH = /^[\p{M}\p{Cf}]$/u

/**
 * How wide a line of text is, without a browser to ask.
 *
 * Each row is a first code point and the advance widths, in thousandths of an em, of the characters
 * from there on. A page is drawn in whatever sans-serif its reader's system has, so each width is the
 * widest that the character has in any of DejaVu Sans, Liberation Sans (which has the widths of Arial
 * and Helvetica), Inter, Roboto, Noto Sans, Open Sans, Ubuntu and Cantarell, regular weight, read from
 * the horizontal metrics of the font files and rounded up. Kerning is left out: it draws text closer
 * far more often than it spreads it.
 */
const ROWS: readonly (readonly [firstCodePoint: number, widths: string])[] = [
  [0x0020, `
    318 401 466 838 642 982 780 300 391 391 584 838 318 591 318 413 637 637 637 637 646 637 637 637 637 637 337 337
    838 838 838 557 1026 690 696 731 785 667 611 778 782 357 571 692 566 920 811 824 667 834 723 667 646 773 690
    1058 686 679 686 391 411 391 838 567 548 613 635 572 635 616 401 635 634 278 278 580 278 975 634 612 635 635
    413 528 402 634 592 823 592 592 553 637 551 637 838
  `],
  [0x00a0, `
    318 401 637 637 725 637 551 614 591 1000 472 612 838 525 1000 684 500 838 442 446 548 637 655 318 538 401 483
    612 970 970 970 611 690 690 690 690 690 690 1000 731 667 667 667 667 357 357 357 339 784 811 824 824 824 824
    824 838 858 772 772 772 772 679 667 631 613 613 613 613 613 613 982 572 616 616 616 616 278 278 278 278 612 634
    612 612 612 612 612 838 612 634 634 634 634 592 635 592 690 613 690 613 690 613 731 572 731 572 731 572 731 572
    784 710 784 635 667 616 667 616 667 616 667 616 667 616 778 635 778 635 778 635 778 635 782 634 917 695 357 278
    357 278 357 278 357 278 357 278 840 556 571 278 692 580 580 566 278 566 278 566 394 563 403 595 336 811 634 811
    634 811 634 814 805 634 824 612 824 612 824 612 1070 1023 723 413 723 413 723 413 667 528 667 528 667 528 667
    528 646 402 646 402 646 402 772 634 772 634 772 634 772 634 772 634 772 634 1053 823 679 592 679 686 553 686
    553 686 553 353
  `],
  [0x0391, '690 687 579 706 667 686 752 788 339 672 690 907 760 657 788 752 667'],
  [0x03a3, '689 646 679 881 686 880 784'],
  [0x03b1, '665 639 592 612 541 544 634 622 340 590 642 637 587 559 612 690 635 587 634 603 610 770 594 778 838'],
  [0x0400, `
    667 668 865 610 731 667 295 295 571 1114 1125 885 710 760 636 752 690 687 687 610 820 667 1078 642 760 760 710
    752 907 752 788 752 667 731 646 636 864 686 777 701 1070 1094 833 886 687 731 1080 723 613 617 590 526 692 616
    901 532 650 650 605 640 771 654 612 654 635 572 583 592 855 592 681 607 916 942 707 790 590 572 843 602 616 616
    625 526 572 528 278 278 278 925 899 652 605 650 592 654
  `],
  [0x0490, '610 526'],
  [0x1e9e, '769'],
  [0x2010, '361 361 637 657 1000 1000 500 553 318 318 318 318 519 519 519 519 557 557 590 590 335 668 1000 318'],
  [0x202f, '200 1342'],
  [0x2032, '232 443'],
  [0x2039, '400 400'],
  [0x2044, '506'],
  [0x20ac, '667'],
  [0x2122, '1000'],
  [0x2153, '970 970'],
  [0x215b, '970 970 970 970'],
  [0x2190, '1000 838 1000 838'],
  [0x2212, '838'],
  [0x2248, '838'],
  [0x2260, '838'],
  [0x2264, '838 838'],
  [0x2713, '838'],
]

const WIDTHS = new Map(
  ROWS.flatMap(([firstCodePoint, widths]) =>
    widths.trim().split(/\s+/).map((width, index) => [String.fromCodePoint(firstCodePoint + index), Number(width)] as const),
  ),
)
