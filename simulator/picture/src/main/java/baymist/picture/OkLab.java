package baymist.picture;

/**
 * A colour in OKLab: lightness 0..1 and two opponent axes, in which equal distances look about equally large.
 *
 * <p>Source: B. Ottosson, "A perceptual color space for image processing" (2020), matrices as published there. sRGB
 * transfer curve: IEC 61966-2-1 (1999).
 *
 * @param l lightness, 0 = black, 1 = white
 * @param a green (-) to red (+)
 * @param b blue (-) to yellow (+)
 */
record OkLab(double l, double a, double b) {
    /** From CIE XYZ with white D65 at (0.9505, 1, 1.0890). */
    static OkLab ofXyz(double x, double y, double z) {
        return ofCones(
                0.8189330101 * x + 0.3618667424 * y - 0.1288597137 * z,
                0.0329845436 * x + 0.9293118715 * y + 0.0361456387 * z,
                0.0482003018 * x + 0.2643662691 * y + 0.6338517070 * z);
    }

    /** From sRGB components 0..1 as stored in an image. */
    static OkLab ofSrgb(double red, double green, double blue) {
        double r = linear(red);
        double g = linear(green);
        double bl = linear(blue);
        return ofCones(
                0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * bl,
                0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * bl,
                0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * bl);
    }

    static OkLab ofPolar(double lightness, double chroma, double hueDeg) {
        double h = Math.toRadians(hueDeg);
        return new OkLab(lightness, chroma * Math.cos(h), chroma * Math.sin(h));
    }

    private static OkLab ofCones(double l, double m, double s) {
        double lr = Math.cbrt(l);
        double mr = Math.cbrt(m);
        double sr = Math.cbrt(s);
        return new OkLab(
                0.2104542553 * lr + 0.7936177850 * mr - 0.0040720468 * sr,
                1.9779984951 * lr - 2.4285922050 * mr + 0.4505937099 * sr,
                0.0259040371 * lr + 0.7827717662 * mr - 0.8086757660 * sr);
    }

    /** sRGB components; outside 0..1 where the colour can't be shown. */
    double[] toSrgb() {
        double lr = l + 0.3963377774 * a + 0.2158037573 * b;
        double mr = l - 0.1055613458 * a - 0.0638541728 * b;
        double sr = l - 0.0894841775 * a - 1.2914855480 * b;
        double lc = lr * lr * lr;
        double mc = mr * mr * mr;
        double sc = sr * sr * sr;
        return new double[] {
            companded(4.0767416621 * lc - 3.3077115913 * mc + 0.2309699292 * sc),
            companded(-1.2684380046 * lc + 2.6097574011 * mc - 0.3413193965 * sc),
            companded(-0.0041960863 * lc - 0.7034186147 * mc + 1.7076147010 * sc)
        };
    }

    /** The nearest colour that 8 bits a channel can show, 0xRRGGBB. */
    int toRgb() {
        int rgb = 0;
        for (double c : toSrgb()) {
            rgb = rgb << 8 | (int) Math.round(255 * Math.min(1, Math.max(0, c)));
        }
        return rgb;
    }

    OkLab towards(OkLab other, double share) {
        return new OkLab(l + share * (other.l - l), a + share * (other.a - a), b + share * (other.b - b));
    }

    double distance(OkLab other) {
        return Math.hypot(Math.hypot(l - other.l, a - other.a), b - other.b);
    }

    static double linear(double c) {
        return c <= 0.04045 ? c / 12.92 : Math.pow((c + 0.055) / 1.055, 2.4);
    }

    static double companded(double c) {
        return c <= 0.0031308 ? 12.92 * c : 1.055 * Math.pow(c, 1 / 2.4) - 0.055;
    }
}
