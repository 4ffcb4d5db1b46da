package org.bookholder.testing;

import com.networknt.schema.Error;
import com.networknt.schema.InputFormat;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.util.List;

/** Checks JSON against a JSON Schema of draft 2020-12. */
public final class JsonSchemas {
    private JsonSchemas() {}

    /** What in {@code json} breaks {@code schema}, one message each; empty if nothing does. Both are JSON texts. */
    public static List<String> violations(String schema, String json) {
        return SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(schema, InputFormat.JSON)
                .validate(json, InputFormat.JSON)
                .stream()
                .map(Error::toString)
                .toList();
    }
}
