package haywright.app.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jdbi.v3.core.Jdbi;

/** What was typed into a form and not saved yet, exactly as typed, right or wrong. */
public final class Drafts {
    /** Stands for the round, where a form belongs to no ranch yet. */
    public static final UUID THE_ROUND = new UUID(0, 0);

    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private final Jdbi jdbi;

    Drafts(Jdbi jdbi) {
        this.jdbi = jdbi;
    }

    /** @param form names the form and what it is about: {@code lot/UUID}, {@code report/new} */
    public void put(UUID ranch, String form, Map<String, List<String>> fields) {
        String json;
        try {
            json = MAPPER.writeValueAsString(fields);
        } catch (JsonProcessingException e) {
            throw new UncheckedIOException(e);
        }
        jdbi.useHandle(h -> h.createUpdate("INSERT INTO draft (ranch_id, form, fields) VALUES (:ranch, :form, :fields)"
                        + " ON CONFLICT (ranch_id, form) DO UPDATE SET fields = excluded.fields")
                .bind("ranch", ranch.toString())
                .bind("form", form)
                .bind("fields", json)
                .execute());
    }

    /** What was typed; empty when nothing is waiting. */
    public Map<String, List<String>> get(UUID ranch, String form) {
        return jdbi.withHandle(h -> h.createQuery("SELECT fields FROM draft WHERE ranch_id = :ranch AND form = :form")
                        .bind("ranch", ranch.toString())
                        .bind("form", form)
                        .mapTo(String.class)
                        .findOne())
                .map(json -> {
                    try {
                        return MAPPER.readValue(json, new TypeReference<Map<String, List<String>>>() {});
                    } catch (JsonProcessingException e) {
                        throw new UncheckedIOException(e);
                    }
                })
                .orElse(Map.of());
    }

    /** Names of the forms that have something waiting. */
    public List<String> waiting(UUID ranch) {
        return jdbi.withHandle(h -> h.createQuery("SELECT form FROM draft WHERE ranch_id = :ranch ORDER BY form")
                .bind("ranch", ranch.toString())
                .mapTo(String.class)
                .list());
    }

    public void clear(UUID ranch, String form) {
        jdbi.useHandle(h -> h.execute("DELETE FROM draft WHERE ranch_id = ? AND form = ?", ranch.toString(), form));
    }
}
