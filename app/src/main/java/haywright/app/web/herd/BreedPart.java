package haywright.app.web.herd;

import haywright.app.web.Form;
import haywright.app.web.Option;
import haywright.app.web.form.Field;
import haywright.app.web.form.Part;
import haywright.cattle.Breed;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** A breed and what it is crossed with. A cross of more than two, which comes from a file, stays whole. */
record BreedPart() implements Part {
    private static final Field BREED = Field.pick(
            "breed",
            "Breed",
            "Sets calf weight, milk and maintenance you don’t enter.",
            breeds(),
            "Beef cattle, no particular breed");
    private static final Field CROSS =
            Field.pick("cross", "Crossed with", "Counts as the average of the two.", breeds(), "None");

    private static List<Option> breeds() {
        return Breed.all().stream()
                .filter(breed -> breed != Breed.AVERAGE)
                .map(breed -> new Option(breed.name(), breed.name()))
                .toList();
    }

    @Override
    public String component() {
        return "breed";
    }

    @Override
    public List<Field> fields() {
        return List.of(BREED, CROSS);
    }

    /** A cross of three has no entry in the list, so its own is added to it. */
    @Override
    public List<Field> fields(Form form) {
        var now = form.value(BREED.ask());
        if (now.isEmpty()
                || BREED.options().stream().anyMatch(option -> option.value().equals(now))) {
            return fields();
        }
        var options = new ArrayList<>(BREED.options());
        options.add(new Option(now, now));
        return List.of(new Field(BREED.ask(), BREED.kind(), BREED.needed(), options, BREED.nothing(), null), CROSS);
    }

    @Override
    public Object read(Form form, Class<?> type, LocalDate today) {
        var one = form.text(BREED.ask());
        var other = form.text(CROSS.ask());
        if (one.isEmpty() && !other.isEmpty()) {
            form.refuse(BREED.name(), "", "a cross has two breeds", "Choose the first, or clear the second.");
        }
        return other.isEmpty() || one.equals(other) ? one : one + " x " + other;
    }

    @Override
    public void know(Map<String, String> known, @Nullable Object value) {
        var whole = value == null ? "" : value.toString().strip();
        var parts = whole.split("\\s+[x×]\\s+");
        known.put(BREED.name(), parts.length == 2 ? parts[0] : whole);
        known.put(CROSS.name(), parts.length == 2 ? parts[1] : "");
    }
}
