package org.bookholder.testing;

import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Proxy;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Optional;
import org.sqlite.SQLiteErrorCode;
import org.sqlite.SQLiteException;

/** Database connections whose updates or commits fail while they are told to let them. */
public final class FailingConnection {
    private Optional<SQLiteErrorCode> failure = Optional.empty();
    private int left;
    private boolean commitUnanswered;
    private int opened;

    /** After {@code count} more updates, each one fails. */
    public void failAfter(int count, SQLiteErrorCode code) {
        left = count;
        failure = Optional.of(code);
    }

    /** The next commit takes effect but is answered with an error, as when only the work after it fails. */
    public void failAfterCommit() {
        commitUnanswered = true;
    }

    public void work() {
        failure = Optional.empty();
    }

    /** The connection, which now fails as told. */
    public Connection over(Connection connection) {
        opened++;
        return proxy(Connection.class, connection);
    }

    /** How many connections were made. */
    public int opened() {
        return opened;
    }

    private <T> T proxy(Class<T> type, T target) {
        return type.cast(Proxy.newProxyInstance(
                type.getClassLoader(), new Class<?>[] {type}, (p, method, arguments) -> {
                    if (method.getName().equals("executeUpdate")) {
                        fail();
                    }
                    try {
                        Object result = method.invoke(target, arguments);
                        if (commitUnanswered && arguments != null && "COMMIT".equals(arguments[0])) {
                            commitUnanswered = false;
                            throw new SQLiteException("failing as told", SQLiteErrorCode.SQLITE_IOERR);
                        }
                        return wrapped(result);
                    } catch (InvocationTargetException e) {
                        throw e.getCause();
                    }
                }));
    }

    private Object wrapped(Object result) {
        if (result instanceof PreparedStatement statement) {
            return proxy(PreparedStatement.class, statement);
        }
        return result instanceof Statement statement ? proxy(Statement.class, statement) : result;
    }

    private void fail() throws SQLException {
        if (failure.isPresent() && left-- <= 0) {
            throw new SQLiteException("failing as told", failure.get());
        }
    }
}
