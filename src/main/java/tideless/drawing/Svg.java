package tideless.drawing;

import tideless.words.Numbers;

/** Text of an SVG picture, element by element; lengths to the hundredth of a unit. */
final class Svg {
    private final StringBuilder text = new StringBuilder();

    /** Opens an element; attributes in pairs of name and value. */
    Svg open(String tag, Object... attributes) {
        head(tag, attributes).append(">\n");
        return this;
    }

    Svg close(String tag) {
        text.append("</").append(tag).append(">\n");
        return this;
    }

    /** An element with nothing in it. */
    Svg element(String tag, Object... attributes) {
        head(tag, attributes).append("/>\n");
        return this;
    }

    /** An element with words in it. */
    Svg words(String tag, String words, Object... attributes) {
        head(tag, attributes).append('>').append(escaped(words)).append("</");
        text.append(tag).append(">\n");
        return this;
    }

    /** Words at a place. */
    Svg label(double x, double y, String kind, String words) {
        return words("text", words, "x", x, "y", y, "class", kind);
    }

    Svg line(double x1, double y1, double x2, double y2, String kind) {
        return element("line", "x1", x1, "y1", y1, "x2", x2, "y2", y2, "class", kind);
    }

    /** A box; nothing where it has no height or width. */
    Svg box(double x, double y, double width, double height, String kind) {
        return width > 0 && height > 0
                ? element("rect", "x", x, "y", y, "width", width, "height", height, "class", kind)
                : this;
    }

    /** An area with corners, x and y in turn. */
    Svg area(String kind, double... corners) {
        return element("polygon", "points", points(corners), "class", kind);
    }

    /** Solution, shaded by its salts, with corners as an area's. */
    Svg water(Salt salt, double... corners) {
        return element(
                "polygon", "points", points(corners), "class", "water", "data-ec", salt.word());
    }

    /** A line through points, x and y in turn. */
    Svg path(String kind, double... points) {
        return element("polyline", "points", points(points), "class", kind);
    }

    private static String points(double... corners) {
        StringBuilder points = new StringBuilder();
        for (int i = 0; i < corners.length; i++) {
            points.append(i == 0 ? "" : i % 2 == 0 ? " " : ",").append(Numbers.label(corners[i]));
        }
        return points.toString();
    }

    private StringBuilder head(String tag, Object... attributes) {
        text.append('<').append(tag);
        for (int i = 0; i < attributes.length; i += 2) {
            Object value = attributes[i + 1];
            String written = value instanceof Double number ? Numbers.label(number) : "" + value;
            text.append(' ').append(attributes[i]).append("=\"").append(escaped(written));
            text.append('"');
        }
        return text;
    }

    /** Words as they stand between tags or quotes, without what XML forbids. */
    static String escaped(String words) {
        StringBuilder escaped = new StringBuilder();
        for (int at = 0; at < words.length(); ) {
            int c = words.codePointAt(at);
            at += Character.charCount(c);
            switch (c) {
                case '<' -> escaped.append("&lt;");
                case '>' -> escaped.append("&gt;");
                case '&' -> escaped.append("&amp;");
                case '"' -> escaped.append("&quot;");
                default -> {
                    boolean stands =
                            c == '\n' || c >= 0x20 && c < 0xD800 || c > 0xDFFF && c < 0xFFFE;
                    escaped.appendCodePoint(stands || c > 0xFFFF ? c : 0xFFFD);
                }
            }
        }
        return escaped.toString();
    }

    @Override
    public String toString() {
        return text.toString();
    }
}
