package tideless.page;

import java.util.Iterator;
import java.util.List;
import java.util.Map;

/** Texts, numbers, lists and tables as JSON, for a page that reads them by its own parser. */
final class Json {
    private Json() {}

    /**
     * What a value is in JSON.
     *
     * @param value a text, a number (null in JSON where it is not finite), a truth, a list, a table
     *     by texts, or null
     */
    static String of(Object value) {
        StringBuilder json = new StringBuilder();
        write(json, value);
        return json.toString();
    }

    private static void write(StringBuilder json, Object value) {
        if (value instanceof String text) {
            quote(json, text);
        } else if (value instanceof Map<?, ?> table) {
            char before = '{';
            for (Map.Entry<?, ?> entry : table.entrySet()) {
                json.append(before);
                quote(json, (String) entry.getKey());
                json.append(':');
                write(json, entry.getValue());
                before = ',';
            }
            json.append(table.isEmpty() ? "{}" : "}");
        } else if (value instanceof List<?> list) {
            json.append('[');
            for (Iterator<?> each = list.iterator(); each.hasNext(); ) {
                write(json, each.next());
                json.append(each.hasNext() ? "," : "");
            }
            json.append(']');
        } else if (value instanceof Double number && !Double.isFinite(number)) {
            json.append("null");
        } else {
            json.append(value);
        }
    }

    private static void quote(StringBuilder json, String text) {
        json.append('"');
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c == '"' || c == '\\') {
                json.append('\\').append(c);
            } else if (c < ' ') {
                json.append(c < 16 ? "\\u000" : "\\u00").append(Integer.toHexString(c));
            } else {
                json.append(c);
            }
        }
        json.append('"');
    }
}
