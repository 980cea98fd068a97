using Laygate.Service;

return await Commands.RunAsync(args);
