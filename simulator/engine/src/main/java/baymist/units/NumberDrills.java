package baymist.units;

/**
 * Diameters of number drills 1 to 80, inch.
 *
 * <p>Source: ASME B94.11M, Twist Drills, as reprinted in shop handbooks (from memory; numbers 80, 41, 40, 32 to 29, 22 to 20, 12 to
 * 10 and 1 compared with a public drill table).
 */
final class NumberDrills {
    private NumberDrills() {}

    /** Ten-thousandths of an inch, index = drill number - 1. */
    private static final int[] TEN_THOUSANDTHS = {
        2280, 2210, 2130, 2090, 2055, 2040, 2010, 1990, 1960, 1935, // 1 to 10
        1910, 1890, 1850, 1820, 1800, 1770, 1730, 1695, 1660, 1610, // 11 to 20
        1590, 1570, 1540, 1520, 1495, 1470, 1440, 1405, 1360, 1285, // 21 to 30
        1200, 1160, 1130, 1110, 1100, 1065, 1040, 1015, 995, 980, // 31 to 40
        960, 935, 890, 860, 820, 810, 785, 760, 730, 700, // 41 to 50
        670, 635, 595, 550, 520, 465, 430, 420, 410, 400, // 51 to 60
        390, 380, 370, 360, 350, 330, 320, 310, 292, 280, // 61 to 70
        260, 250, 240, 225, 210, 200, 180, 160, 145, 135, // 71 to 80
    };

    /** Whether there is a drill of this number. */
    static boolean exists(int number) {
        return number >= 1 && number <= TEN_THOUSANDTHS.length;
    }

    /** Diameter, 1e-4 inch, of an existing number. */
    static int tenThousandthsOfInch(int number) {
        if (!exists(number)) {
            throw new IllegalArgumentException("number drill " + number + ", 1 to 80 exist");
        }
        return TEN_THOUSANDTHS[number - 1];
    }
}
