package haywright.app.web;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A form that was sent, beside what its boxes showed when it was opened and what they show now.
 *
 * @param before null where that cannot be told
 * @param now null where there is no such form any more
 * @param seen what stood beside the boxes when a draft was shown again; null where nothing did
 */
record Apart(
        Form form,
        @Nullable Boxes before,
        @Nullable Boxes now,
        @Nullable Boxes seen) {
    /** Whether its boxes say what the other window changed. */
    boolean isOfBoxes() {
        return before != null && now != null && !before.values().equals(now.values());
    }

    private Set<String> names() {
        var names = new LinkedHashSet<String>();
        for (var boxes : both()) {
            names.addAll(boxes.values().keySet());
        }
        names.addAll(form.typed().keySet());
        names.remove(Form.CONFIRM);
        return names;
    }

    private List<Boxes> both() {
        return before == null || now == null ? List.of() : List.of(before, now);
    }

    private static String in(@Nullable Boxes boxes, String name) {
        return boxes == null ? "" : boxes.value(name);
    }

    private String mine(String name) {
        return form.value(name).strip();
    }

    private boolean isMine(String name) {
        return isApart(name, mine(name), in(before, name));
    }

    private boolean isTheirs(String name) {
        return isApart(name, in(now, name), in(before, name));
    }

    /** Whoever sent the form had theirs before their eyes. */
    private boolean isSeen(String name) {
        return seen != null && !in(now, name).isEmpty() && !isApart(name, in(seen, name), in(now, name));
    }

    private boolean differs(String name) {
        return isApart(name, mine(name), in(now, name));
    }

    /** 1,200 lb is 1200 in a box of pounds. */
    private boolean isApart(String name, String one, String other) {
        var box = box(name);
        return !one.equals(other) && (box == null || !box.words(one).equals(box.words(other)));
    }

    private Boxes.@Nullable Shown box(String name) {
        return both().stream()
                .map(boxes -> boxes.shown().get(name))
                .filter(Objects::nonNull)
                .reduce((before, now) -> now)
                .orElse(null);
    }

    private boolean isWhole() {
        return form.asksAsOne() && names().stream().anyMatch(name -> isMine(name) && differs(name));
    }

    /** The form with what the other window alone changed. */
    Map<String, List<String>> together() {
        var all = form.typed();
        if (isWhole()) {
            return all;
        }
        for (var name : names()) {
            if (!isMine(name) && isTheirs(name)) {
                put(all, name, in(now, name));
            }
        }
        return all;
    }

    static void put(Map<String, List<String>> typed, String name, String value) {
        if (value.isEmpty()) {
            typed.remove(name); // as a box that is not ticked is sent
        } else {
            typed.put(name, List.of(value));
        }
    }

    /** What both changed; the title is empty where the page has no name for it. */
    List<TwoVersions.Choice> choices() {
        var choices = new ArrayList<TwoVersions.Choice>();
        var rows = new ArrayList<TwoVersions.Row>();
        boolean whole = isWhole();
        for (var name : names()) {
            if (differs(name) && !isSeen(name) && (whole || isMine(name) && isTheirs(name))) {
                var row = row(name);
                rows.add(row);
                choices.add(new TwoVersions.Choice(name, row.what(), List.of(row), in(now, name)));
            }
        }
        if (!whole || rows.isEmpty()) {
            return choices;
        }
        boolean named = rows.stream().noneMatch(row -> row.what().isEmpty());
        return List.of(new TwoVersions.Choice(TwoVersions.ALL, named ? "All of it" : "", rows, ""));
    }

    private TwoVersions.Row row(String name) {
        var box = box(name);
        return box == null
                ? new TwoVersions.Row("", "", "")
                : new TwoVersions.Row(box.ask().label(), box.words(mine(name)), box.words(in(now, name)));
    }
}
