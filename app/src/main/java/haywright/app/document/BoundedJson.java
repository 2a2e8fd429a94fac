package haywright.app.document;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.io.JsonEOFException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import haywright.workings.Problem;
import java.io.CharConversionException;
import java.io.IOException;

/** JSON from outside. As a tree it takes many times its size in memory, so its parts are counted while it is read. */
public final class BoundedJson {
    /** Ten times what the deepest document has. */
    private static final int DEEPEST = 100;

    /** No figure on earth has as many digits, and long ones take long to convert. */
    private static final int LONGEST_NUMBER = 100;

    /** Ten times the longest name there is, an id or a key. */
    private static final int LONGEST_NAME = 1000;

    private BoundedJson() {}

    /**
     * @param longestText letters of one text
     * @param most names, values and brackets together
     */
    public static JsonMapper mapper(int longestText, long most) {
        var limits = StreamReadConstraints.builder()
                .maxStringLength(longestText)
                .maxNameLength(LONGEST_NAME)
                .maxTokenCount(most)
                .maxNestingDepth(DEEPEST)
                .maxNumberLength(LONGEST_NUMBER)
                .build();
        return JsonMapper.builder(JsonFactory.builder()
                        .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                        .streamReadConstraints(limits)
                        .build())
                .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
                .build();
    }

    /** What is wrong with the text, and where. */
    public static Problem problem(String field, JsonProcessingException e) {
        var where = e.getLocation();
        var place = where == null ? "the file" : "line " + where.getLineNr() + ", column " + where.getColumnNr();
        return e instanceof StreamConstraintsException
                ? new Problem(field, place, why(e), "Is it another file?")
                : new Problem(field, place, "this is not JSON: " + why(e), "Export it again, or fix that line.");
    }

    /** Why it cannot be read, by the kind of its failure: a parser speaks to programrs, of classes and settings. */
    public static String why(IOException e) {
        var said =
                String.valueOf(e instanceof JsonProcessingException json ? json.getOriginalMessage() : e.getMessage());
        if (e instanceof StreamConstraintsException) {
            return said.contains("nesting")
                    ? "brackets stand deeper inside each other than %d".formatted(DEEPEST)
                    : said.startsWith("Number")
                            ? "a number is longer than %d digits".formatted(LONGEST_NUMBER)
                            : "up to here it is longer, or in more parts, than such a file can be";
        }
        var quoted = quoted(said);
        if (said.startsWith("Duplicate")) {
            return "the key %s stands twice in one object".formatted(quoted);
        }
        if (said.startsWith("Trailing")) {
            return "something stands after its end";
        }
        if (e instanceof JsonEOFException || said.startsWith("Unexpected end")) {
            return "it ends too early: a bracket or a quotation mark is still open";
        }
        if (said.contains("CTRL-CHAR")) {
            return "a character stands here that cannot be seen, and JSON takes none";
        }
        if (said.startsWith("Unexpected character")) {
            return "%s cannot stand here; a comma, a colon, a bracket or a quotation mark may be missing or too many"
                    .formatted(quoted);
        }
        if (said.startsWith("Unrecognized token") || said.startsWith("Non-standard token")) {
            return "%s is no value; a text stands in \"quotation marks\"".formatted(quoted);
        }
        if (said.contains("UTF-8") || said.contains("UTF-32") || e instanceof CharConversionException) {
            return "its letters are not written as UTF-8";
        }
        if (said.contains("numeric") || said.contains("umber")) {
            return "a number is written like 0.5 or -12: no plus sign, no zero before other digits, a digit on either side of the point";
        }
        if (said.contains("escape")) {
            return "a backslash stands before a character that takes none";
        }
        return "something stands here that cannot";
    }

    private static String quoted(String said) {
        int from = said.indexOf('\'');
        int to = from < 0 ? -1 : said.indexOf('\'', from + 2);
        if (to < 0) {
            return "this";
        }
        var what = said.substring(from + 1, to);
        return "“" + (what.length() > 40 ? what.substring(0, 40) + "…" : what) + "”";
    }
}
