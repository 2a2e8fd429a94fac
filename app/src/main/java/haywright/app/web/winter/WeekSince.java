package haywright.app.web.winter;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Page;
import haywright.app.words.Measures;
import haywright.quantity.Unit;
import haywright.ranch.Ranch;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A week's form that was opened before the ranch changed: boxes of it that are gone by now, or counted in something else. */
record WeekSince(Page page, Form form, Ranch opened) {
    WeekSince(Page page, Form form) {
        this(page, form, page.opened());
    }

    /** Says beside its box what cannot be taken any more. */
    void refuse() {
        gone().forEach((box, name) -> {
            form.text(box);
            form.refuse(
                    box.name(),
                    form.value(box),
                    name + " is no longer on this ranch",
                    "Empty this box, or take back on the history page that it was deleted.");
        });
        WeekPages.lots(page.ranch()).forEach(lot -> {
            var before = opened.lots().get(lot.id());
            if (before != null) {
                var was = WeekPages.boxes(before);
                var is = WeekPages.boxes(lot);
                refuseCountedOtherwise(was.fed(), is.fed());
                refuseCountedOtherwise(was.left(), is.left());
            }
        });
    }

    private void refuseCountedOtherwise(Ask was, Ask is) {
        if (was.unit() != is.unit() && form.value(is).matches("[^\\p{L}]+")) {
            form.refuse(
                    is.name(),
                    form.value(is),
                    "this box was in %s when the page was opened and is in %s now".formatted(in(was), in(is)),
                    Measures.say("Enter it in {tons} or pounds, with the unit."));
        }
    }

    private static String in(Ask ask) {
        return ask.unit() == Unit.NONE ? "bales" : Measures.tons();
    }

    /** Boxes that something was typed in and that the ranch has no lot or group for, with its name. */
    Map<Ask, String> gone() {
        var gone = new LinkedHashMap<Ask, String>();
        var lots = WeekPages.lots(page.ranch()).map(lot -> lot.id()).toList();
        WeekPages.lots(opened).filter(lot -> !lots.contains(lot.id())).forEach(lot -> {
            var boxes = WeekPages.boxes(lot);
            List.of(boxes.fed(), boxes.left(), boxes.refused()).forEach(ask -> gone.put(ask, lot.name()));
        });
        opened.groups().values().stream()
                .filter(group -> !page.ranch().groups().containsKey(group.id()))
                .forEach(group -> {
                    var boxes = WeekPages.boxes(group);
                    List.of(boxes.score(), boxes.card()).forEach(ask -> gone.put(ask, group.name()));
                });
        gone.keySet().removeIf(form::isEmpty);
        return gone;
    }
}
