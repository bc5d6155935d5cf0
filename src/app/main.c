#include "app/app.h"

int main(int count, char **arguments)
{
    return sw_app(count, arguments);
}
