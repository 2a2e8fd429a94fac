package haywright.sampling;

import haywright.workings.PublishedTable;
import haywright.workings.Source;
import java.util.Arrays;
import java.util.List;

/** What is commonly done, with no source to name. */
public record Practice(String id, String item, String words, Source source) {
    private static final PublishedTable TABLE = PublishedTable.read(Practice.class, "practice.csv");

    /** @param ids separated by spaces: "P01 P02" */
    static List<Practice> named(String ids) {
        return Arrays.stream(ids.split(" "))
                .filter(id -> !id.isEmpty())
                .map(Practice::of)
                .toList();
    }

    private static Practice of(String id) {
        var row = TABLE.row("id", id);
        var low = row.text("low");
        var high = row.text("high");
        var number = low.isEmpty()
                ? (high.isEmpty() ? "" : "at most " + high)
                : high.isEmpty() || high.equals(low) ? low : low + " to " + high;
        var words = String.join(" ", number, row.text("unit"), row.text("note")).strip();
        return new Practice(id, row.text("item"), words, Source.practice(row.text("source")));
    }
}
