package baymist.print;

/** Paper of the card. */
public enum Paper {
    A4("A4", 210, 297),
    LETTER("letter", 215.9, 279.4);

    private final String css;
    private final double widthMm;
    private final double heightMm;

    Paper(String css, double widthMm, double heightMm) {
        this.css = css;
        this.widthMm = widthMm;
        this.heightMm = heightMm;
    }

    /** Its name in a style sheet. */
    String css() {
        return css;
    }

    public double widthMm() {
        return widthMm;
    }

    public double heightMm() {
        return heightMm;
    }
}
