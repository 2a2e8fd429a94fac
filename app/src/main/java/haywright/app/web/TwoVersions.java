package haywright.app.web;

import com.fasterxml.jackson.databind.JsonNode;
import haywright.app.document.Patch;
import haywright.app.document.RanchDocument;
import haywright.app.store.Edit;
import haywright.app.store.SaveAnswer;
import io.javalin.http.Context;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Two people, or two windows, changed the same thing. What only one of them changed stands, box by box; where both did, they
 * are shown side by side, to choose from, as the form's own page has them.
 *
 * @param action where the form goes again
 * @param draft the print of what is kept of it
 * @param typed the whole form, sent again with the choice: with what the other window alone changed
 * @param choices none where both can stand
 */
public record TwoVersions(
        String action, String back, @Nullable String draft, Map<String, List<String>> typed, List<Choice> choices) {
    /**
     * @param id of the choice: the box, or {@link #ALL}
     * @param theirs what would stand in the box; nothing where it is more than one
     */
    public record Choice(String id, String title, List<Row> rows, String theirs) {}

    /** One line in which they differ. */
    public record Row(String what, String mine, String theirs) {}

    /** Hidden on the page, before the name of each choice there is; and the revision that it is made upon. */
    static final String BETWEEN = "between/";

    static final String UPON = "upon";
    /** Before the name of a choice: {@code mine} or {@code theirs}. */
    static final String STANDS = "stands/";
    /** Before the name of a box: what stands in it in the other window. */
    static final String THEIRS = "theirs/";
    /** The choice that is of everything that was sent. */
    static final String ALL = "all";

    private static final String GIVEN_UP = "theirs";

    static TwoVersions of(Page page, long base, Form form, String words, SaveAnswer.Conflict conflict, String then) {
        var now = Boxes.of(page, form.key());
        var seen = page.seen();
        var apart = new Apart(
                form,
                boxes(page, base, form).orElse(null),
                now.orElse(null),
                seen == null ? null : boxes(page, seen, form).orElse(null));
        var typed = apart.isOfBoxes() ? apart.together() : form.typed();
        var choices = apart.isOfBoxes() ? apart.choices() : List.<Choice>of();
        boolean unnamed = choices.stream().anyMatch(choice -> choice.title().isEmpty());
        if (unnamed || !apart.isOfBoxes() && touchTheSame(page, base, conflict)) {
            choices = List.of(whole(page, base, words, conflict));
        }
        return new TwoVersions(
                page.http().path(), page.at(then), page.unfinished().print(form), typed, choices);
    }

    private static Optional<Boxes> boxes(Page page, long rev, Form form) {
        return page.desk()
                .store()
                .ranches()
                .at(page.ranch().id(), rev)
                .flatMap(ranch -> Boxes.of(new Page(page.http(), page.desk(), ranch, rev, page.here()), form.key()));
    }

    /** What was done in each window, in the words of the history. */
    private static Choice whole(Page page, long base, String words, SaveAnswer.Conflict conflict) {
        var theirs = page.desk().store().ranches().history(page.ranch().id()).stream()
                .filter(edit -> edit.rev() > base && edit.paths().stream().anyMatch(conflict.paths()::contains))
                .sorted(Comparator.comparingLong(Edit::rev))
                .map(Edit::words)
                .collect(Collectors.joining("; "));
        return new Choice(ALL, words, List.of(new Row("What was done", words, theirs)), "");
    }

    /** Where no box says what it was: whether both moved one figure of an entity, or took it away. */
    private static boolean touchTheSame(Page page, long base, SaveAnswer.Conflict conflict) {
        var documents = new RanchDocument();
        var before = page.desk().store().ranches().at(page.ranch().id(), base).map(documents::tree);
        if (before.isEmpty()) {
            return true;
        }
        var theirs = documents.tree(conflict.theirs());
        var mine = documents.tree(conflict.mine());
        return conflict.paths().stream().anyMatch(path -> {
            var then = leaves(Patch.at(before.get(), path));
            var now = leaves(Patch.at(theirs, path));
            var sent = leaves(Patch.at(mine, path));
            var names = new LinkedHashSet<>(then.keySet());
            names.addAll(now.keySet());
            names.addAll(sent.keySet());
            return names.stream()
                    .anyMatch(name -> !Objects.equals(then.get(name), now.get(name))
                            && !Objects.equals(now.get(name), sent.get(name)));
        });
    }

    /** What was typed, with what of the other window was chosen. */
    static Map<String, List<String>> chosen(Context http) {
        var typed = new LinkedHashMap<>(http.formParamMap());
        for (var id : between(http)) {
            var theirs = http.formParam(THEIRS + id);
            if (theirs != null && GIVEN_UP.equals(http.formParam(STANDS + id))) {
                Apart.put(typed, id, theirs);
            }
        }
        return typed;
    }

    /** Whether each choice that there was is made. */
    static boolean isChosen(Context http) {
        var all = between(http);
        return !all.isEmpty() && all.stream().allMatch(id -> http.formParam(STANDS + id) != null);
    }

    private static List<String> between(Context http) {
        return http.formParamMap().keySet().stream()
                .filter(name -> name.startsWith(BETWEEN))
                .map(name -> name.substring(BETWEEN.length()))
                .toList();
    }

    /** Sent by the page of two versions, and no box of the form. */
    static boolean isOfTheChoice(String name) {
        return name.startsWith(BETWEEN) || name.startsWith(STANDS) || name.startsWith(THEIRS);
    }

    /** Whether nothing of what was sent is to stand. */
    static boolean isGivenUp(Context http) {
        return GIVEN_UP.equals(http.formParam(STANDS + ALL));
    }

    private static Map<String, JsonNode> leaves(JsonNode node) {
        var leaves = new TreeMap<String, JsonNode>();
        if (node.isObject()) {
            node.properties()
                    .forEach(part -> leaves(part.getValue())
                            .forEach((name, leaf) -> leaves.put(part.getKey() + "/" + name, leaf)));
        } else {
            leaves.put("", node);
        }
        return leaves;
    }
}
