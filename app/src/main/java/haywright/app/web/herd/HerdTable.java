package haywright.app.web.herd;

import haywright.app.web.Ask;
import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.web.Page;
import haywright.app.web.Routes;
import haywright.app.web.table.Column;
import haywright.app.web.table.TableForm;
import haywright.app.words.Show;
import haywright.cattle.AnimalClass;
import haywright.cattle.Breed;
import haywright.cattle.herd.Group;
import haywright.ranch.Ranch;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;

/** A herd list from a spreadsheet: each line is read as the form of a group is. */
final class HerdTable implements TableForm.Of<Group> {
    private static final String ANIMALS = "animals";

    private static final List<Option> CLASSES = Stream.concat(
                    Option.of(AnimalClass.class, AnimalClass::words).stream(),
                    Stream.of(
                            new Option(Form.id(AnimalClass.MATURE_COW), "cows"),
                            new Option(Form.id(AnimalClass.FIRST_CALF_HEIFER), "first calf heifer"),
                            new Option(Form.id(AnimalClass.BULL), "herd bulls"),
                            new Option(Form.id(AnimalClass.GROWING), "steers"),
                            new Option(Form.id(AnimalClass.GROWING), "calves"),
                            new Option(Form.id(AnimalClass.GROWING), "weaned calves"),
                            new Option(Form.id(AnimalClass.GROWING), "replacement heifers")))
            .toList();

    private static final List<Option> BREEDS = Breed.all().stream()
            .map(breed -> new Option(breed == Breed.AVERAGE ? "" : breed.name(), breed.name()))
            .toList();

    private static final TableForm TABLE = new TableForm(List.of(
            Column.typed("name", "group", "name", "group name"),
            Column.chosen(ANIMALS, CLASSES, "class", "kind", "kind of cattle", "type"),
            Column.typed("head", "head", "count", "number", "number of head", "no of head"),
            Column.typed("weight", "average weight", "weight", "avg weight", "body weight", "wt"),
            Column.chosen(
                    "shrunk",
                    List.of(new Option("no", "full"), new Option("yes", "shrunk")),
                    "scale",
                    "weight is",
                    "full or shrunk"),
            Column.typed("weighedOn", "weighed on", "date weighed", "weigh date"),
            Column.typed("conditionScore", "body condition score", "condition score", "condition", "bcs", "score"),
            Column.typed("matureWeight", "mature weight", "weight at score 5", "mature wt"),
            Column.chosen("breed", BREEDS, "breed"),
            Column.chosen("cross", BREEDS, "crossed with", "cross"),
            Column.typed("calvingFirst", "first calves due", "calving starts", "calving begins", "first calf", "due"),
            Column.typed("calvingWeeks", "weeks of calving", "calving weeks"),
            Column.typed("inCalfNow", "head due", "bred head", "head bred"),
            Column.typed("gain", "gain lb/day", "gain", "adg", "gain to feed for"),
            Column.typed("turnout", "turnout", "turnout date")));

    private static final TableForm.At AT = new TableForm.At("herd/table", "Groups from a table", "herd", "group");

    private final Page page;

    private HerdTable(Page page) {
        this.page = page;
    }

    static void routes(Routes on) {
        on.get(AT.key(), page -> TABLE.show(page, AT));
        on.post(AT.key(), page -> TABLE.keep(page, AT, new HerdTable(page)));
    }

    @Override
    public Map<String, String> usual() {
        return Map.of("shrunk", "no", "weighedOn", Show.date(page.today()));
    }

    @Override
    public List<String> said() {
        return GroupForm.SAID;
    }

    @Override
    public Optional<Group> read(Ranch ranch, Form form) {
        var name = form.value("name").strip();
        if (ranch.groups().values().stream().anyMatch(one -> one.name().strip().equalsIgnoreCase(name))) {
            form.refuse(
                    "name", name, "a group of this name is here already", "Leave the line out, or change its name.");
        }
        var classes = Stream.of(AnimalClass.values()).map(AnimalClass::words).toList();
        var animals = form.choice(
                Ask.choice(ANIMALS, "Class", ""), AnimalClass.class, "One of: " + String.join(", ", classes) + ".");
        return form.hasProblems()
                ? Optional.empty()
                : GroupForm.read(form, animals, UUID.randomUUID(), null, GroupPages.cowsWeigh(ranch), page.today());
    }

    @Override
    public String says(Form form, Group group) {
        var calving = group.firstCalving()
                .map(first -> ", first calf " + Show.date(first))
                .orElse("");
        return group.name() + ": " + GroupPages.facts(group) + calving + GroupForm.taken(form, group);
    }

    @Override
    public Ranch with(Ranch ranch, Group group) {
        return ranch.with(group);
    }
}
