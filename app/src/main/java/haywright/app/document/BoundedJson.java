package haywright.app.document;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.json.JsonMapper;
import haywright.workings.Problem;

/** JSON from outside. As a tree it takes many times its size in memory, so its parts are counted while it is read. */
public final class BoundedJson {
    /** Ten times what the deepest document has. */
    private static final int DEEPEST = 100;

    /** No figure on earth has as many digits, and long ones take long to convert. */
    private static final int LONGEST_NUMBER = 100;

    private BoundedJson() {}

    /**
     * @param longestText letters of one text
     * @param most names, values and brackets together
     */
    public static JsonMapper mapper(int longestText, long most) {
        var limits = StreamReadConstraints.builder()
                .maxStringLength(longestText)
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
                ? new Problem(
                        field,
                        place,
                        "up to here it is longer, deeper or in more parts than such a file can be",
                        "Is it another file?")
                : new Problem(
                        field,
                        place,
                        "this is not JSON: "
                                + e.getOriginalMessage().lines().findFirst().orElse(""),
                        "Export it again, or fix that line.");
    }
}
